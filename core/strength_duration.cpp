// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength_duration.h"

#include "core/lapicque_squares.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <numeric>
#include <optional>
#include <set>
#include <utility>

namespace quadrille
{

namespace
{

/// What rounding leaves of a zero, relative to the values it was computed from. Thresholds in whole
/// µA differ by far more.
constexpr double nothing = 1e-12;

/// The points as plain numbers: x and y of a regression.
struct Samples {
    std::vector<double> x;
    std::vector<double> y;
};

template <class X, class Y>
Samples samplesOf(std::span<const ThresholdPoint> points, X x, Y y)
{
    Samples samples;
    for (const ThresholdPoint& point : points) {
        const double duration = point.phaseDuration.shown();
        const double threshold = point.threshold.shown();
        samples.x.push_back(x(duration));
        samples.y.push_back(y(duration, threshold));
    }
    return samples;
}

double meanOf(const std::vector<double>& values)
{
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

struct Line {
    double intercept = 0.0;
    double slope = 0.0;
    bool rises = false;       ///< over the samples, by more than rounding
    bool startsAbove = false; ///< at x = 0 above 0, by more than rounding
};

/// Ordinary least squares; needs two different x.
Line lineThrough(const Samples& samples)
{
    const double xMean = meanOf(samples.x);
    const double yMean = meanOf(samples.y);
    double xx = 0.0;
    double xy = 0.0;
    for (std::size_t i = 0; i < samples.x.size(); ++i) {
        xx += (samples.x[i] - xMean) * (samples.x[i] - xMean);
        xy += (samples.x[i] - xMean) * (samples.y[i] - yMean);
    }
    Line line;
    line.slope = xy / xx;
    line.intercept = yMean - line.slope * xMean;
    const auto [least, most] = std::ranges::minmax(samples.x);
    line.rises = line.slope * (most - least) > nothing * yMean;
    line.startsAbove = line.intercept > nothing * yMean;
    return line;
}

/// Rheobase in mA and chronaxie in µs.
struct Constants {
    double rheobase = 0.0;
    double chronaxie = 0.0;
};

Error noFit(std::vector<Amount> figures)
{
    return {ErrorCode::noFit, {}, {}, Field::threshold, std::move(figures)};
}

Result<Constants> constantsOrNoFit(const Line& line, Constants constants)
{
    if (line.rises && line.startsAbove) {
        return constants;
    }
    return noFit(
        {{constants.rheobase, Unit::milliampere}, {constants.chronaxie, Unit::microsecond}});
}

Result<Constants> weissConstants(std::span<const ThresholdPoint> points)
{
    const Line line = lineThrough(samplesOf(
        points, [](double duration) { return 1.0 / duration; },
        [](double /*duration*/, double threshold) { return threshold; }));
    return constantsOrNoFit(line, {line.intercept, line.slope / line.intercept});
}

Result<Constants> weissConstantsOnCharge(std::span<const ThresholdPoint> points)
{
    const Line line = lineThrough(samplesOf(
        points, [](double duration) { return duration; },
        [](double duration, double threshold) { return threshold * duration; }));
    return constantsOrNoFit(line, {line.slope, line.intercept / line.slope});
}

Result<Constants> lapicqueConstants(std::span<const ThresholdPoint> points)
{
    const Samples samples = samplesOf(
        points, [](double duration) { return duration; },
        [](double /*duration*/, double threshold) { return threshold; });
    const auto constants = leastLapicqueSquares(samples.x, samples.y);
    if (!constants) {
        return noFit({});
    }
    return Constants{constants->rheobase, constants->tau * std::numbers::ln2};
}

Result<Constants> constantsOf(std::span<const ThresholdPoint> points, StrengthDurationLaw law)
{
    switch (law) {
    case StrengthDurationLaw::weiss:
        return weissConstants(points);
    case StrengthDurationLaw::weissOnCharge:
        return weissConstantsOnCharge(points);
    case StrengthDurationLaw::lapicque:
        break;
    }
    return lapicqueConstants(points);
}

std::size_t differentDurations(std::span<const ThresholdPoint> points)
{
    std::set<PhaseDuration> durations;
    for (const ThresholdPoint& point : points) {
        durations.insert(point.phaseDuration);
    }
    return durations.size();
}

constexpr std::size_t leastDurations = 2;

std::optional<Error> problemWith(std::span<const ThresholdPoint> points)
{
    constexpr auto shortest = PhaseDuration::fromCount(1);
    constexpr auto weakest = Amplitude::fromCount(1);
    for (const ThresholdPoint& point : points) {
        if (point.phaseDuration < shortest) {
            return Error{ErrorCode::outOfRange,
                         {},
                         {},
                         Field::phaseDuration,
                         {amountOf(point.phaseDuration), amountOf(shortest)}};
        }
        if (point.threshold < weakest) {
            return Error{ErrorCode::outOfRange,
                         {},
                         {},
                         Field::threshold,
                         {amountOf(point.threshold), amountOf(weakest)}};
        }
    }
    const auto different = static_cast<std::int64_t>(differentDurations(points));
    if (different < static_cast<std::int64_t>(leastDurations)) {
        return Error{ErrorCode::tooFewDurations,
                     {},
                     {},
                     Field::phaseDuration,
                     {countOf(different), countOf(leastDurations)}};
    }
    return std::nullopt;
}

} // namespace

FittedDuration StrengthDurationFit::timeConstant() const
{
    return FittedDuration(chronaxie.shown() / std::numbers::ln2);
}

FittedCurrent StrengthDurationFit::thresholdAt(PhaseDuration phaseDuration) const
{
    const double duration = phaseDuration.shown();
    if (law == StrengthDurationLaw::lapicque) {
        return FittedCurrent(rheobase.shown() / -std::expm1(-duration / timeConstant().shown()));
    }
    return FittedCurrent(rheobase.shown() * (1.0 + chronaxie.shown() / duration));
}

ChargePerPhase StrengthDurationFit::chargeAt(PhaseDuration phaseDuration) const
{
    return ChargePerPhase(thresholdAt(phaseDuration).shown() * phaseDuration.shown() / 1e3);
}

Result<StrengthDurationFit> fitStrengthDuration(std::span<const ThresholdPoint> points,
                                                StrengthDurationLaw law)
{
    if (const auto problem = problemWith(points)) {
        return *problem;
    }
    const Result<Constants> constants = constantsOf(points, law);
    if (!constants) {
        return constants.error();
    }
    StrengthDurationFit fit;
    fit.law = law;
    fit.rheobase = FittedCurrent(constants->rheobase);
    fit.chronaxie = FittedDuration(constants->chronaxie);
    double squares = 0.0;
    for (const ThresholdPoint& point : points) {
        const double residual =
            point.threshold.shown() - fit.thresholdAt(point.phaseDuration).shown();
        fit.residuals.emplace_back(residual);
        squares += residual * residual;
    }
    fit.rmse = FittedCurrent(std::sqrt(squares / static_cast<double>(points.size())));
    return fit;
}

std::vector<Finding> fitFindings(const StrengthDurationFit& fit,
                                 std::span<const ThresholdPoint> points)
{
    std::vector<Finding> findings;
    double sum = 0.0;
    for (const ThresholdPoint& point : points) {
        sum += point.threshold.shown();
    }
    const double percent = 100.0 * fit.rmse.shown() * static_cast<double>(points.size()) / sum;
    if (percent > limits::mostFitErrorPercent) {
        findings.push_back({.code = FindingCode::poorFit,
                            .severity = Severity::attention,
                            .field = Field::threshold,
                            .figure = Amount{percent, Unit::percent},
                            .limit = Amount{limits::mostFitErrorPercent, Unit::percent},
                            .source = limits::mostFitErrorSource,
                            .advice = Advice::checkThresholds});
    }
    if (fit.chronaxie > limits::mostChronaxie) {
        findings.push_back({.code = FindingCode::chronaxieLong,
                            .severity = Severity::attention,
                            .field = Field::threshold,
                            .figure = amountOf(fit.chronaxie),
                            .limit = amountOf(limits::mostChronaxie),
                            .source = limits::mostChronaxieSource,
                            .advice = Advice::checkThresholds});
    }
    if (differentDurations(points) == leastDurations) {
        findings.push_back({.code = FindingCode::fitUnchecked,
                            .severity = Severity::note,
                            .field = Field::phaseDuration,
                            .figure = countOf(leastDurations),
                            .advice = Advice::measureMoreDurations});
    }
    return findings;
}

LeastCharge leastCharge(const StrengthDurationFit& fit, const CountRange& offered)
{
    const auto shortest = PhaseDuration::fromCount(offered.least);
    return {shortest, fit.thresholdAt(shortest), fit.chargeAt(shortest)};
}

} // namespace quadrille
