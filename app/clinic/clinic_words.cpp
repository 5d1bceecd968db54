// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/clinic_words.h"

#include "app/words/measurement_text.h"
#include "app/words/trade_words.h"

#include <QCoreApplication>
#include <QStringList>

namespace quadrille::app
{

namespace
{

struct ClinicWords {
    Q_DECLARE_TR_FUNCTIONS(ClinicWords)
};

constexpr std::int64_t mostTorque = 2'000'000; ///< thousandths of N·m; far beyond any joint

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
    const auto values = valuesFrom(number, text);
    if (!values || values->size() != 1 || values->front() < 0 || values->front() > mostTorque) {
        return std::nullopt;
    }
    return values->front();
}

QString clinicSiteText(const ClinicSite& site, const QuantityText& text)
{
    Site named;
    named.muscle = site.muscle;
    named.side = site.side;
    QStringList parts;
    if (site.placementConfirmed) {
        parts << ClinicWords::tr("pads as planned");
    }
    if (site.skinBefore) {
        parts << ClinicWords::tr("skin before: %1").arg(skinLookName(*site.skinBefore));
    }
    for (const ClinicThreshold& threshold : site.thresholds) {
        parts << thresholdText(threshold, text);
    }
    if (site.contractionSeen) {
        parts << (*site.contractionSeen ? ClinicWords::tr("contraction seen")
                                        : ClinicWords::tr("no contraction seen"));
    }
    if (site.torque) {
        parts << ClinicWords::tr("torque %1").arg(torqueText(*site.torque, text));
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
