// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/clinic_words.h"

#include "app/words/trade_words.h"

#include <QCoreApplication>
#include <QStringList>

#include <cmath>

namespace quadrille::app
{

namespace
{

struct ClinicWords {
    Q_DECLARE_TR_FUNCTIONS(ClinicWords)
};

constexpr double mostTorque = 2000.0; ///< N·m; far beyond any joint

QString thresholdText(const ClinicThreshold& threshold, const QuantityText& text)
{
    QStringList parts;
    const auto add = [&](const QString& words, const std::optional<Amplitude>& amplitude) {
        if (amplitude) {
            parts << words.arg(text.amount(amountOf(*amplitude)));
        }
    };
    add(ClinicWords::tr("felt from %1"), threshold.sensory);
    add(ClinicWords::tr("twitch from %1"), threshold.motor);
    add(ClinicWords::tr("tolerated up to %1"), threshold.tolerated);
    return ClinicWords::tr("at %1 %2")
        .arg(text.amount(amountOf(threshold.phaseDuration)), parts.join(QStringLiteral(", ")));
}

} // namespace

QString cuePhaseName(CuePhase phase)
{
    switch (phase) {
    case CuePhase::rampUp:
        return ClinicWords::tr("Ramp up");
    case CuePhase::hold:
        return ClinicWords::tr("Hold");
    case CuePhase::rampDown:
        return ClinicWords::tr("Ramp down");
    case CuePhase::rest:
        return ClinicWords::tr("Rest");
    case CuePhase::over:
        return ClinicWords::tr("Over");
    }
    return {};
}

QString skinLookName(SkinLook look)
{
    switch (look) {
    case SkinLook::clear:
        return ClinicWords::tr("nothing to see");
    case SkinLook::pink:
        return ClinicWords::tr("pink or marked, unbroken");
    case SkinLook::broken:
        return ClinicWords::tr("broken, blister or burn");
    }
    return {};
}

QString torqueText(std::int64_t thousandths, const QuantityText& text)
{
    return text.shortNumber(static_cast<double>(thousandths) / 1e3, 1) + noBreakSpace() +
           QStringLiteral("N·m");
}

std::optional<std::int64_t> torqueFrom(const QString& typed, const QuantityText& text)
{
    QString number = typed.trimmed();
    for (const QString& unit :
         {QStringLiteral("N·m"), QStringLiteral("Nm"), QStringLiteral("N m")}) {
        if (number.endsWith(unit, Qt::CaseInsensitive)) {
            number = number.chopped(unit.size()).trimmed();
            break;
        }
    }
    bool isNumber = false;
    double value = text.locale().toDouble(number, &isNumber);
    if (!isNumber) {
        value = number.replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&isNumber);
    }
    if (!isNumber || !(value >= 0.0) || value > mostTorque) {
        return std::nullopt;
    }
    return static_cast<std::int64_t>(std::llround(value * 1e3));
}

QString clinicSiteText(const ClinicSite& site, const QuantityText& text)
{
    Site named;
    named.muscle = site.muscle;
    named.side = site.side;
    QStringList parts;
    for (const ClinicThreshold& threshold : site.thresholds) {
        parts << thresholdText(threshold, text);
    }
    if (site.contractionSeen) {
        parts << (*site.contractionSeen ? ClinicWords::tr("contraction seen")
                                        : ClinicWords::tr("no contraction seen"));
    }
    if (site.torque) {
        parts << torqueText(*site.torque, text);
    }
    if (site.skinAfter) {
        parts << ClinicWords::tr("skin afterwards: %1").arg(skinLookName(*site.skinAfter));
    }
    if (!site.note.empty()) {
        parts << QString::fromStdString(site.note);
    }
    return ClinicWords::tr("%1: %2.").arg(siteName(named), parts.join(QStringLiteral("; ")));
}

} // namespace quadrille::app
