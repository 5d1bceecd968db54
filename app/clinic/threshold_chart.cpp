// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/threshold_chart.h"

#include "app/words/finding_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>

namespace quadrille::app
{

namespace
{

struct ThresholdWords {
    Q_DECLARE_TR_FUNCTIONS(ThresholdWords)
};

constexpr std::array kinds{ThresholdKind::motor, ThresholdKind::sensory};
constexpr int curvePoints = 60;
constexpr double crossHalf = 0.012; ///< of an axis
constexpr double labelAt = 0.9;     ///< of the x axis, at the most

QString kindName(ThresholdKind kind)
{
    return kind == ThresholdKind::motor ? ThresholdWords::tr("motor")
                                        : ThresholdWords::tr("sensory");
}

Result<StrengthDurationFit> fitOf(const ClinicSite& site, ThresholdKind kind)
{
    return fitStrengthDuration(thresholdPoints(site, kind), StrengthDurationLaw::weiss);
}

struct Extent {
    double duration = 0.0;
    double current = 0.0;
};

Extent extentOf(const ClinicSite& site)
{
    Extent extent;
    for (const ThresholdKind kind : kinds) {
        for (const ThresholdPoint& point : thresholdPoints(site, kind)) {
            extent.duration = std::max(extent.duration, point.phaseDuration.shown());
            extent.current = std::max(extent.current, point.threshold.shown());
        }
    }
    return extent;
}

void addCross(ChartSpec& spec, const ThresholdPoint& point, bool upright)
{
    const double x = point.phaseDuration.shown();
    const double y = point.threshold.shown();
    const double dx = (spec.x.most - spec.x.least) * crossHalf;
    const double dy = (spec.y.most - spec.y.least) * crossHalf * 2.0;
    // Motor thresholds are upright crosses, sensory ones lie askew: told apart without colour.
    if (upright) {
        spec.lines.push_back({.points = {{x - dx, y}, {x + dx, y}}});
        spec.lines.push_back({.points = {{x, y - dy}, {x, y + dy}}});
    } else {
        spec.lines.push_back({.points = {{x - dx, y - dy}, {x + dx, y + dy}}});
        spec.lines.push_back({.points = {{x - dx, y + dy}, {x + dx, y - dy}}});
    }
}

void addCurve(ChartSpec& spec, const ClinicSite& site, ThresholdKind kind)
{
    const auto points = thresholdPoints(site, kind);
    if (points.empty()) {
        return;
    }
    for (const ThresholdPoint& point : points) {
        addCross(spec, point, kind == ThresholdKind::motor);
    }
    const auto fit = fitOf(site, kind);
    const ThresholdPoint last =
        *std::ranges::max_element(points, {}, [](const auto& p) { return p.phaseDuration; });
    QPointF end(last.phaseDuration.shown(), last.threshold.shown());
    if (fit) {
        ChartLine curve;
        curve.kind =
            kind == ThresholdKind::motor ? ChartLine::Kind::current : ChartLine::Kind::comparison;
        for (int i = 1; i <= curvePoints; ++i) {
            const auto duration = PhaseDuration::fromCount(
                std::llround(spec.x.most * static_cast<double>(i) / curvePoints));
            const double current =
                duration.count() > 0 ? fit->thresholdAt(duration).shown() : spec.y.most;
            if (current <= spec.y.most) {
                curve.points.emplace_back(duration.shown(), current);
            }
        }
        if (!curve.points.empty()) {
            end = curve.points.back();
        }
        spec.lines.push_back(std::move(curve));
    }
    // Left of the curve's end, where the word has room.
    end.setX(std::min(end.x(), spec.x.most * labelAt));
    spec.texts.push_back(
        {end, kindName(kind), ChartText::Place::above, kind == ThresholdKind::motor});
}

} // namespace

ChartSpec thresholdChart(const ClinicSite& site, const QuantityText& text)
{
    ChartSpec spec;
    const Extent extent = extentOf(site);
    spec.x.title = ThresholdWords::tr("phase duration, µs");
    spec.y.title = ThresholdWords::tr("threshold, mA");
    spec.x.ticks = roundTicks(std::max(extent.duration * 1.15, 100.0), 4);
    spec.y.ticks = roundTicks(std::max(extent.current * 1.3, 10.0), 4);
    spec.x.most = spec.x.ticks.back();
    spec.y.most = spec.y.ticks.back();
    for (ChartAxis* axis : {&spec.x, &spec.y}) {
        for (const double tick : axis->ticks) {
            axis->tickNames.append(text.shortNumber(tick, 1));
        }
    }
    for (const ThresholdKind kind : kinds) {
        addCurve(spec, site, kind);
    }
    spec.spoken = thresholdSentences(site, text).join(QLatin1Char(' '));
    return spec;
}

QStringList thresholdSentences(const ClinicSite& site, const QuantityText& text)
{
    QStringList sentences;
    bool tooFew = true;
    for (const ThresholdKind kind : kinds) {
        const auto points = thresholdPoints(site, kind);
        const auto fit = fitOf(site, kind);
        if (!fit) {
            const bool noFit = fit.error().code == ErrorCode::noFit;
            tooFew = tooFew && !noFit;
            if (noFit) {
                sentences << ThresholdWords::tr("No strength–duration curve fits the %1 "
                                                "thresholds: check them, or measure again.")
                                 .arg(kindName(kind));
            }
            continue;
        }
        tooFew = false;
        sentences << ThresholdWords::tr("%1: rheobase %2, chronaxie %3 (Weiss’ law).")
                         .arg(kindName(kind) == ThresholdWords::tr("motor")
                                  ? ThresholdWords::tr("Motor")
                                  : ThresholdWords::tr("Sensory"),
                              text.shortNumber(fit->rheobase.shown(), 1) + noBreakSpace() +
                                  unitSymbol(Unit::milliampere),
                              text.shortNumber(fit->chronaxie.shown(), 0) + noBreakSpace() +
                                  unitSymbol(Unit::microsecond));
        for (const Finding& finding : fitFindings(*fit, points)) {
            sentences << findingText(finding, text).what;
        }
    }
    if (tooFew) {
        sentences << ThresholdWords::tr("Thresholds at two or more phase durations give a "
                                        "strength–duration curve.");
    }
    return sentences;
}

} // namespace quadrille::app
