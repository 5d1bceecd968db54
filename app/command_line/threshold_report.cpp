// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/threshold_report.h"

#include "app/command_line/exact_decimal.h"
#include "app/words/error_text.h"
#include "app/words/finding_text.h"

#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QStringList>

#include <algorithm>
#include <array>
#include <cmath>

namespace quadrille::app
{

namespace
{

struct ThresholdReportWords {
    Q_DECLARE_TR_FUNCTIONS(ThresholdReportWords)
};

constexpr std::array allLaws{StrengthDurationLaw::weiss, StrengthDurationLaw::weissOnCharge,
                             StrengthDurationLaw::lapicque};

/// What the JSON calls a law.
QString keyOf(StrengthDurationLaw law)
{
    switch (law) {
    case StrengthDurationLaw::weiss:
        return QStringLiteral("weiss");
    case StrengthDurationLaw::weissOnCharge:
        return QStringLiteral("weissq");
    case StrengthDurationLaw::lapicque:
        break;
    }
    return QStringLiteral("lapicque");
}

QString shortNameOf(StrengthDurationLaw law)
{
    switch (law) {
    case StrengthDurationLaw::weiss:
        return ThresholdReportWords::tr("Weiss");
    case StrengthDurationLaw::weissOnCharge:
        return ThresholdReportWords::tr("Weiss on charge");
    case StrengthDurationLaw::lapicque:
        break;
    }
    return ThresholdReportWords::tr("Lapicque");
}

QString formulaOf(StrengthDurationLaw law)
{
    switch (law) {
    case StrengthDurationLaw::weiss:
        return ThresholdReportWords::tr(
            "threshold = rheobase × (1 + chronaxie / duration), least squares of the current");
    case StrengthDurationLaw::weissOnCharge:
        return ThresholdReportWords::tr("the same law, least squares of the charge");
    case StrengthDurationLaw::lapicque:
        break;
    }
    return ThresholdReportWords::tr("threshold = rheobase / (1 − exp(−duration / τ)), chronaxie = "
                                    "τ ln 2, least squares of the current");
}

/// The durations that were measured; a law is not asked beyond them.
CountRange measuredDurations(const ThresholdSeries& series)
{
    const auto [shortest, longest] =
        std::ranges::minmax(series.points, {}, &ThresholdPoint::phaseDuration);
    return {shortest.phaseDuration.count(), longest.phaseDuration.count(), 1,
            shortest.phaseDuration.count()};
}

QString withoutPoint(QString sentence)
{
    if (sentence.endsWith(QLatin1Char('.'))) {
        sentence.chop(1);
    }
    return sentence;
}

QString wholeMicroseconds(FittedDuration duration, const QuantityText& text)
{
    return text.amount({std::round(duration.shown()), Unit::microsecond});
}

QString milliamperes(FittedCurrent current, const QuantityText& text)
{
    return text.number(current.shown(), 2) + noBreakSpace() + unitSymbol(Unit::milliampere);
}

QString lawText(const LawFit& law, const SiteFits& site, const QuantityText& text)
{
    QString words = QStringLiteral("%1: %2\n").arg(shortNameOf(law.law), formulaOf(law.law));
    if (!law.fit) {
        return words + QStringLiteral("  %1\n").arg(errorText(law.fit.error(), text));
    }
    const StrengthDurationFit& fit = *law.fit;
    words += ThresholdReportWords::tr("  rheobase %1, chronaxie %2, r.m.s. error %3")
                 .arg(milliamperes(fit.rheobase, text), wholeMicroseconds(fit.chronaxie, text),
                      milliamperes(fit.rmse, text));
    if (fit.law == StrengthDurationLaw::lapicque) {
        words +=
            ThresholdReportWords::tr(", τ %1").arg(wholeMicroseconds(fit.timeConstant(), text));
    }
    const LeastCharge least = leastCharge(fit, measuredDurations(site.series));
    words +=
        ThresholdReportWords::tr("\n  least charge at threshold: %1 per phase, at %2, the "
                                 "shortest measured\n")
            .arg(text.amount(amountOf(least.charge)), text.amount(amountOf(least.phaseDuration)));
    return words;
}

/// The remarks on all laws; one that holds for several stands there once.
QString remarksText(const SiteFits& site, const QuantityText& text)
{
    QStringList remarks;
    QList<QStringList> lawsOf; // those that a remark holds for
    for (const LawFit& law : site.laws) {
        for (const Finding& finding :
             law.fit ? fitFindings(*law.fit, site.series.points) : std::vector<Finding>()) {
            const FindingText found = findingText(finding, text);
            const QString remark = QStringList{found.what, found.advice, found.source}
                                       .join(QLatin1Char(' '))
                                       .trimmed();
            if (!remarks.contains(remark)) {
                remarks.append(remark);
                lawsOf.append(QStringList());
            }
            lawsOf[remarks.indexOf(remark)].append(shortNameOf(law.law));
        }
    }
    QString words;
    for (qsizetype i = 0; i < remarks.size(); ++i) {
        words += QStringLiteral("\n%1: %2\n").arg(lawsOf[i].join(QStringLiteral(", ")), remarks[i]);
    }
    return words;
}

/// With its sign, unless it is rounded to nothing.
QString residualText(FittedCurrent residual, const QuantityText& text)
{
    const bool positive = residual.shown() >= 0.005;
    const QString digits = text.number(residual.shown(), 2);
    if (!positive && residual.shown() > -0.005) {
        return text.number(0.0, 2);
    }
    return positive ? QLatin1Char('+') + digits : digits;
}

/// Measured thresholds, and behind them measured - fitted by each law that fits.
QString pointsText(const SiteFits& site, const QuantityText& text)
{
    constexpr int width = 18;
    const auto column = [](const QString& words) { return words.rightJustified(width); };
    QString lines = column(ThresholdReportWords::tr("phase, µs")) +
                    column(ThresholdReportWords::tr("threshold, mA"));
    for (const LawFit& law : site.laws) {
        if (law.fit) {
            lines += column(shortNameOf(law.law));
        }
    }
    lines += QLatin1Char('\n');
    for (std::size_t i = 0; i < site.series.points.size(); ++i) {
        const ThresholdPoint& point = site.series.points[i];
        lines += column(text.count(point.phaseDuration.count())) +
                 column(text.shortNumber(point.threshold.shown(), 3));
        for (const LawFit& law : site.laws) {
            if (law.fit) {
                lines += column(residualText(law.fit->residuals[i], text));
            }
        }
        lines += QLatin1Char('\n');
    }
    return lines;
}

QString siteText(const SiteFits& site, const QuantityText& text)
{
    QString words;
    if (!site.series.site.isEmpty()) {
        words += ThresholdReportWords::tr("Site: %1\n").arg(site.series.site);
    }
    words += ThresholdReportWords::tr("Thresholds, and what each law leaves of them (measured − "
                                      "fitted, mA)\n");
    words += pointsText(site, text);
    for (const LawFit& law : site.laws) {
        words += QLatin1Char('\n') + lawText(law, site, text);
    }
    return words + remarksText(site, text);
}

/// Eight significant digits, as the other tables of the command line have them.
double significant(double value)
{
    return QString::number(value, 'g', 8).toDouble();
}

QJsonArray findingsJson(const std::vector<Finding>& findings)
{
    QJsonArray array;
    for (const Finding& finding : findings) {
        const FindingText words = findingText(finding, QuantityText(QLocale::c()));
        array.append(QJsonObject{{QStringLiteral("what"), words.what},
                                 {QStringLiteral("source"), words.source},
                                 {QStringLiteral("advice"), words.advice}});
    }
    return array;
}

/// The figures of one law; those that are not defined are null.
void addLaw(QJsonObject& object, const LawFit& law, const SiteFits& site)
{
    const QString key = keyOf(law.law);
    const auto add = [&](const char* name, auto valueOf) {
        object.insert(key + QLatin1String(name),
                      law.fit ? QJsonValue(significant(valueOf(*law.fit))) : QJsonValue());
    };
    using Fit = StrengthDurationFit;
    add("_rheobase_ma", [](const Fit& fit) { return fit.rheobase.shown(); });
    add("_chronaxie_us", [](const Fit& fit) { return fit.chronaxie.shown(); });
    add("_rmse_ma", [](const Fit& fit) { return fit.rmse.shown(); });
    add("_least_charge_uc", [&](const Fit& fit) {
        return leastCharge(fit, measuredDurations(site.series)).charge.shown();
    });
    if (law.law == StrengthDurationLaw::lapicque) {
        add("_tau_us", [](const Fit& fit) { return fit.timeConstant().shown(); });
    }
    if (law.fit) {
        object.insert(key + QLatin1String("_findings"),
                      findingsJson(fitFindings(*law.fit, site.series.points)));
    } else {
        object.insert(key + QLatin1String("_problem"),
                      errorText(law.fit.error(), QuantityText(QLocale::c())));
    }
}

QJsonObject siteJson(const SiteFits& site)
{
    QJsonObject object;
    if (!site.series.site.isEmpty()) {
        object.insert(QStringLiteral("site"), site.series.site);
    }
    object.insert(QStringLiteral("points"), static_cast<qint64>(site.series.points.size()));
    object.insert(QStringLiteral("least_charge_phase_duration_us"),
                  static_cast<qint64>(measuredDurations(site.series).least));
    for (const LawFit& law : site.laws) {
        addLaw(object, law, site);
    }
    QJsonArray thresholds;
    for (std::size_t i = 0; i < site.series.points.size(); ++i) {
        const ThresholdPoint& point = site.series.points[i];
        QJsonObject threshold{
            {QStringLiteral("phase_duration_us"), static_cast<qint64>(point.phaseDuration.count())},
            {QStringLiteral("threshold_ma"), point.threshold.shown()}};
        for (const LawFit& law : site.laws) {
            threshold.insert(keyOf(law.law) + QLatin1String("_residual_ma"),
                             law.fit ? QJsonValue(significant(law.fit->residuals[i].shown()))
                                     : QJsonValue());
        }
        thresholds.append(threshold);
    }
    object.insert(QStringLiteral("thresholds"), thresholds);
    return object;
}

} // namespace

Result<std::vector<SiteFits>> fitsOf(const std::vector<ThresholdSeries>& series,
                                     const QString& name)
{
    std::vector<SiteFits> fits;
    for (const ThresholdSeries& site : series) {
        SiteFits found{site, {}};
        for (const StrengthDurationLaw law : allLaws) {
            found.laws.push_back({law, fitStrengthDuration(site.points, law)});
        }
        if (std::ranges::none_of(found.laws,
                                 [](const LawFit& law) { return law.fit.has_value(); })) {
            const QString why =
                withoutPoint(errorText(found.laws.front().fit.error(), QuantityText(QLocale::c())));
            const QString where = site.site.isEmpty()
                                      ? why
                                      : ThresholdReportWords::tr("site %1: %2").arg(site.site, why);
            return Error{
                ErrorCode::badFormat, name.toStdString(), where.toStdString(), Field::none, {}};
        }
        fits.push_back(found);
    }
    return fits;
}

QString fitsAsText(const std::vector<SiteFits>& fits, const QuantityText& text)
{
    QString words;
    for (const SiteFits& site : fits) {
        words += siteText(site, text) + QLatin1Char('\n');
    }
    return words + ThresholdReportWords::tr(
                       "Rheobase and chronaxie hang on the pads, their distance and the waveform; "
                       "compare sides and dates in one patient.\n");
}

QByteArray fitsAsJson(const std::vector<SiteFits>& fits)
{
    QJsonArray array;
    for (const SiteFits& site : fits) {
        array.append(siteJson(site));
    }
    return QJsonDocument(QJsonObject{{QStringLiteral("fits"), array}}).toJson();
}

QString jsonFiguresHelp()
{
    return QStringLiteral("  points, weiss_rheobase_ma, weiss_chronaxie_us, weiss_rmse_ma,\n"
                          "  weissq_rheobase_ma, weissq_chronaxie_us, weissq_rmse_ma,\n"
                          "  lapicque_rheobase_ma, lapicque_tau_us, lapicque_chronaxie_us, "
                          "lapicque_rmse_ma,\n"
                          "  least_charge_phase_duration_us, weiss_least_charge_uc,\n"
                          "  weissq_least_charge_uc, lapicque_least_charge_uc");
}

} // namespace quadrille::app
