// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"
#include "tests/core/threshold_series.h"

#include "core/strength_duration.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;

namespace
{

StrengthDurationFit lawOf(StrengthDurationLaw law, double rheobase, double chronaxie)
{
    StrengthDurationFit fit;
    fit.law = law;
    fit.rheobase = FittedCurrent(rheobase);
    fit.chronaxie = FittedDuration(chronaxie);
    return fit;
}

StrengthDurationFit fitted(const std::vector<ThresholdPoint>& points, StrengthDurationLaw law)
{
    const Result<StrengthDurationFit> fit = fitStrengthDuration(points, law);
    EXPECT_TRUE(fit.has_value());
    return fit ? *fit : StrengthDurationFit{};
}

Error problemOf(const std::vector<ThresholdPoint>& points, StrengthDurationLaw law)
{
    const Result<StrengthDurationFit> fit = fitStrengthDuration(points, law);
    EXPECT_FALSE(fit.has_value());
    return fit ? Error{} : fit.error();
}

/// Seven thresholds of series S3.
const std::vector<ThresholdPoint> sevenThresholds{{100_us, 41_mA}, {150_us, 31_mA}, {200_us, 27_mA},
                                                  {250_us, 23_mA}, {300_us, 21_mA}, {400_us, 18_mA},
                                                  {500_us, 17_mA}};

} // namespace

// tests/reference/strength_duration_fits.csv: four series fitted independently of this program,
// printed with 8 significant digits. Series S2 has thresholds to 1e-8 mA; the fits are
// proportional to the current, so all series are given in units of 1e-8 mA in place of 1e-3.
TEST(StrengthDurationFits, AgreeWithTheReferenceTable)
{
    constexpr double unitsPerMicroampere = 1e5;
    const ReferenceTable fits = referenceFits();
    ASSERT_EQ(fits.rowCount(), 4U);
    for (std::size_t row = 0; row < fits.rowCount(); ++row) {
        const std::string series = fits.text(row, "dataset_id");
        SCOPED_TRACE(series);
        const auto points = seriesOf(series, 1e8);
        EXPECT_EQ(std::to_string(points.size()), fits.text(row, "points"));
        for (const NamedLaw& named : namedLaws) {
            SCOPED_TRACE(named.name);
            const StrengthDurationFit fit = fitted(points, named.law);
            const std::string start = named.name;
            const auto expectNear = [&](double value, const std::string& column) {
                const double expected = fits.number(row, start + column);
                EXPECT_NEAR(value, expected, 1e-7 * expected) << column;
            };
            expectNear(fit.rheobase.shown() / unitsPerMicroampere, "_rheobase_ma");
            expectNear(fit.chronaxie.shown(), "_chronaxie_us");
            EXPECT_NEAR(fit.rmse.shown() / unitsPerMicroampere,
                        fits.number(row, start + "_rmse_ma"), 1e-7);
            if (named.law == StrengthDurationLaw::lapicque) {
                expectNear(fit.timeConstant().shown(), "_tau_us");
            }
        }
    }
}

// Series S3 in whole milliampere, as a practice would measure it; figures worked out beside the
// table above.
TEST(StrengthDurationFits, OfSevenThresholdsInWholeMilliampere)
{
    const StrengthDurationFit weiss = fitted(sevenThresholds, StrengthDurationLaw::weiss);
    EXPECT_NEAR(weiss.rheobase.shown(), 10.931706, 5e-7);
    EXPECT_NEAR(weiss.chronaxie.shown(), 277.10185, 5e-6);
    const auto onCharge = fitted(sevenThresholds, StrengthDurationLaw::weissOnCharge);
    EXPECT_NEAR(onCharge.rheobase.shown(), 10.664671, 5e-7);
    EXPECT_NEAR(onCharge.chronaxie.shown(), 289.83717, 5e-6);
    const StrengthDurationFit lapicque = fitted(sevenThresholds, StrengthDurationLaw::lapicque);
    EXPECT_NEAR(lapicque.rheobase.shown(), 15.872788, 5e-7);
    EXPECT_NEAR(lapicque.timeConstant().shown(), 208.34369, 5e-6);
    EXPECT_NEAR(lapicque.chronaxie.shown(), 144.41284, 5e-6);
}

TEST(StrengthDurationFits, SayWhatIsLeftOfEachThreshold)
{
    for (const NamedLaw& named : namedLaws) {
        const StrengthDurationFit fit = fitted(sevenThresholds, named.law);
        ASSERT_EQ(fit.residuals.size(), sevenThresholds.size());
        double squares = 0.0;
        for (std::size_t i = 0; i < sevenThresholds.size(); ++i) {
            const double measured = sevenThresholds[i].threshold.shown();
            const double law = fit.thresholdAt(sevenThresholds[i].phaseDuration).shown();
            EXPECT_NEAR(law + fit.residuals[i].shown(), measured, 1e-12);
            squares += (measured - law) * (measured - law);
        }
        EXPECT_NEAR(fit.rmse.shown(), std::sqrt(squares / 7.0), 1e-12);
    }
}

// Worked by hand: two thresholds, 42 mA at 0.1 ms and 18 mA at 0.4 ms; by Weiss' law
// Irh = (I2 d2 - I1 d1) / (d2 - d1) = (7.2 - 4.2) / 0.3 = 10 mA, tch = 4.2 / 10 - 0.1 = 0.32 ms,
// and at 0.25 ms 10 (1 + 1.28) = 22.80 mA.
TEST(StrengthDurationFits, OfTwoThresholdsAreThoseOfTheTwoPointFormula)
{
    const std::vector<ThresholdPoint> two{{100_us, 42_mA}, {400_us, 18_mA}};
    for (const auto law : {StrengthDurationLaw::weiss, StrengthDurationLaw::weissOnCharge}) {
        const StrengthDurationFit fit = fitted(two, law);
        EXPECT_NEAR(fit.rheobase.shown(), 10.0, 1e-12);
        EXPECT_NEAR(fit.chronaxie.shown(), 320.0, 1e-10);
        EXPECT_NEAR(fit.thresholdAt(250_us).shown(), 22.80, 1e-12);
        EXPECT_NEAR(fit.rmse.shown(), 0.0, 1e-12);
    }
    const StrengthDurationFit lapicque = fitted(two, StrengthDurationLaw::lapicque);
    EXPECT_NEAR(lapicque.thresholdAt(100_us).shown(), 42.0, 1e-12);
    EXPECT_NEAR(lapicque.thresholdAt(400_us).shown(), 18.0, 1e-12);
}

// Worked by hand: Irh 10 mA, tch 0.30 ms. Both laws give twice the rheobase at the chronaxie, by
// definition.
TEST(StrengthDurationLaws, GiveTheThresholdsOfTheFormulas)
{
    const StrengthDurationFit weiss = lawOf(StrengthDurationLaw::weiss, 10.0, 300.0);
    EXPECT_NEAR(weiss.thresholdAt(200_us).shown(), 25.00, 1e-12); // 10 (1 + 1.5)
    EXPECT_NEAR(weiss.chargeAt(200_us).shown(), 5.000, 1e-12);    // 25 mA × 0.2 ms
    EXPECT_NEAR(weiss.thresholdAt(300_us).shown(), 20.00, 1e-12);
    EXPECT_NEAR(weiss.thresholdAt(600_us).shown(), 15.00, 1e-12);
    const StrengthDurationFit lapicque = lawOf(StrengthDurationLaw::lapicque, 10.0, 300.0);
    EXPECT_NEAR(lapicque.timeConstant().shown(), 432.8, 0.05);
    EXPECT_NEAR(lapicque.thresholdAt(200_us).shown(), 27.02, 0.005); // 10 / (1 - e^-0.4621)
    EXPECT_NEAR(lapicque.thresholdAt(300_us).shown(), 20.00, 1e-12);
    EXPECT_NEAR(lapicque.thresholdAt(600_us).shown(), 13.33, 0.005);
}

// Worked by hand: Irh 10 mA, tch 20 ms (denervated; value from memory). A phase of 300 µs is out of
// reach of a stimulator for innervated muscle.
TEST(StrengthDurationLaws, PutDenervatedMuscleOutOfReachOfShortPhases)
{
    const StrengthDurationFit weiss = lawOf(StrengthDurationLaw::weiss, 10.0, 20'000.0);
    EXPECT_NEAR(weiss.thresholdAt(300_us).shown(), 676.7, 0.05);
    EXPECT_NEAR(weiss.thresholdAt(100'000_us).shown(), 12.00, 0.005);
    const StrengthDurationFit lapicque = lawOf(StrengthDurationLaw::lapicque, 10.0, 20'000.0);
    EXPECT_NEAR(lapicque.thresholdAt(300_us).shown(), 966.8, 0.05);
    EXPECT_NEAR(lapicque.thresholdAt(100'000_us).shown(), 10.32, 0.005);
}

// Charge at threshold is Irh (d + tch) by Weiss' law and Irh d / (1 - exp(-d / tau)) by Lapicque's;
// both grow with d. Held against a walk through every phase offered.
TEST(LeastCharge, IsAtTheShortestPhaseOffered)
{
    for (const NamedLaw& named : namedLaws) {
        const StrengthDurationFit fit = fitted(sevenThresholds, named.law);
        const CountRange offered{50, 400, 10, 50};
        PhaseDuration least = PhaseDuration::fromCount(offered.least);
        for (std::int64_t count = offered.least; count <= offered.most; count += offered.step) {
            const auto duration = PhaseDuration::fromCount(count);
            if (fit.chargeAt(duration) < fit.chargeAt(least)) {
                least = duration;
            }
        }
        const LeastCharge found = leastCharge(fit, offered);
        EXPECT_EQ(found.phaseDuration, least);
        EXPECT_NEAR(found.charge.shown(), found.threshold.shown() * least.shown() / 1000.0, 1e-12);
    }
    // 10 mA (50 + 300) µs, worked by hand.
    const StrengthDurationFit weiss = lawOf(StrengthDurationLaw::weiss, 10.0, 300.0);
    EXPECT_NEAR(leastCharge(weiss, {50, 400, 10, 50}).charge.shown(), 3.5, 1e-12);
}

TEST(StrengthDurationFits, NeedTwoDifferentDurations)
{
    for (const NamedLaw& named : namedLaws) {
        const Error none = problemOf({}, named.law);
        EXPECT_EQ(none.code, ErrorCode::tooFewDurations);
        EXPECT_EQ(none.figures, (std::vector{countOf(0), countOf(2)}));
        const Error one = problemOf({{200_us, 27_mA}, {200_us, 28_mA}}, named.law);
        EXPECT_EQ(one.code, ErrorCode::tooFewDurations);
        EXPECT_EQ(one.field, Field::phaseDuration);
        EXPECT_EQ(one.figures, (std::vector{countOf(1), countOf(2)}));
    }
}

TEST(StrengthDurationFits, RefuseDurationsAndThresholdsThatAreNotAboveZero)
{
    for (const NamedLaw& named : namedLaws) {
        const Error duration = problemOf({{0_us, 27_mA}, {200_us, 20_mA}}, named.law);
        EXPECT_EQ(duration.code, ErrorCode::outOfRange);
        EXPECT_EQ(duration.field, Field::phaseDuration);
        EXPECT_EQ(duration.figures,
                  (std::vector{Amount{0.0, Unit::microsecond}, Amount{1.0, Unit::microsecond}}));
        const Error threshold =
            problemOf({{100_us, 27_mA}, {200_us, Amplitude::fromCount(-1)}}, named.law);
        EXPECT_EQ(threshold.code, ErrorCode::outOfRange);
        EXPECT_EQ(threshold.field, Field::threshold);
        EXPECT_EQ(threshold.figures, (std::vector{Amount{-0.001, Unit::milliampere},
                                                  Amount{0.001, Unit::milliampere}}));
    }
}

// A threshold that grows with the duration gives a chronaxie below 0; one that falls faster than
// 1/d a rheobase below 0; a constant one a chronaxie of 0, one that falls as 1/d a rheobase of 0
// (the formulas for two points, above).
TEST(StrengthDurationFits, RefuseThresholdsThatFollowNoSuchLaw)
{
    const std::vector<std::vector<ThresholdPoint>> against{
        {{100_us, 18_mA}, {400_us, 42_mA}},
        {{100_us, 40_mA}, {400_us, 9_mA}},
        {{100_us, 20_mA}, {400_us, 20_mA}},
        {{100_us, 40_mA}, {400_us, 10_mA}},
        {{100_us, 21_mA}, {170_us, 21_mA}, {230_us, 21_mA}, {410_us, 21_mA}, {900_us, 21_mA}},
        {{100_us, 63_mA}, {300_us, 21_mA}, {700_us, 9_mA}, {900_us, 7_mA}},
        {{100_us, 20_mA}, {100_us, 30_mA}, {400_us, 25_mA}}};
    for (std::size_t i = 0; i < against.size(); ++i) {
        for (const NamedLaw& named : namedLaws) {
            SCOPED_TRACE(testing::Message() << "series " << i << " " << named.name);
            const Error error = problemOf(against[i], named.law);
            EXPECT_EQ(error.code, ErrorCode::noFit);
            EXPECT_EQ(error.field, Field::threshold);
        }
    }
    const Error falling = problemOf(against[1], StrengthDurationLaw::weiss);
    ASSERT_EQ(falling.figures.size(), 2U);
    EXPECT_NEAR(falling.figures[0].value, (9.0 * 400.0 - 40.0 * 100.0) / 300.0, 1e-12);
    EXPECT_EQ(falling.figures[0].unit, Unit::milliampere);
    EXPECT_EQ(falling.figures[1].unit, Unit::microsecond);
}

TEST(StrengthDurationFits, HoldWhereThresholdsHardlyFallOrFallNearlyAsTheDurationGrows)
{
    const std::vector<std::vector<ThresholdPoint>> narrow{
        {{100_us, 1'000'000_uA}, {400_us, 999'999_uA}},
        {{100_us, 400'000_uA}, {400_us, 100'001_uA}},
        {{1_us, 1000_mA}, {1'000'000_us, 1_uA * 2}}};
    for (const auto& points : narrow) {
        for (const NamedLaw& named : namedLaws) {
            SCOPED_TRACE(testing::Message() << points[1].threshold.count() << " " << named.name);
            const StrengthDurationFit fit = fitted(points, named.law);
            EXPECT_GT(fit.rheobase.shown(), 0.0);
            EXPECT_GT(fit.chronaxie.shown(), 0.0);
            EXPECT_LT(fit.rmse.shown(), 1e-6);
        }
    }
}

// More than 10 % of the mean threshold: common practice, no source. By hand: at 100 and 200 µs,
// twice each, thresholds of 50 ± s and 40 ± s mA leave s everywhere, whatever the law; the mean is
// 45 mA, so 4.5 mA are the limit.
TEST(FitFindings, SayThatAFitIsPoor)
{
    const auto scattered = [](std::int64_t microampere) {
        const auto s = Amplitude::fromCount(microampere);
        return std::vector<ThresholdPoint>{
            {100_us, 50_mA + s}, {100_us, 50_mA - s}, {200_us, 40_mA + s}, {200_us, 40_mA - s}};
    };
    for (const NamedLaw& named : namedLaws) {
        const auto close = scattered(4499);
        EXPECT_EQ(codesOf(fitFindings(fitted(close, named.law), close)),
                  std::vector{FindingCode::fitUnchecked});
        const auto poor = scattered(4501);
        const auto findings = fitFindings(fitted(poor, named.law), poor);
        ASSERT_EQ(codesOf(findings),
                  (std::vector{FindingCode::poorFit, FindingCode::fitUnchecked}));
        EXPECT_EQ(findings.front().severity, Severity::attention);
        EXPECT_NEAR(findings.front().figure->value, 4.501 / 0.45, 1e-9);
        EXPECT_EQ(findings.front().limit, (Amount{10.0, Unit::percent}));
        EXPECT_EQ(findings.front().source, limits::commonPractice);
    }
}

// Over 1 ms is suspicious for innervated muscle (value from memory). Thresholds by Weiss' law with
// 10 mA and 990 or 1010 µs, worked by hand.
TEST(FitFindings, RemarkOnALongChronaxie)
{
    const std::vector<ThresholdPoint> usual{
        {100_us, 109_mA}, {200_us, 59'500_uA}, {500_us, 29'800_uA}};
    EXPECT_TRUE(fitFindings(fitted(usual, StrengthDurationLaw::weiss), usual).empty());
    const std::vector<ThresholdPoint> longer{
        {100_us, 111_mA}, {200_us, 60'500_uA}, {500_us, 30'200_uA}};
    const auto findings = fitFindings(fitted(longer, StrengthDurationLaw::weiss), longer);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::chronaxieLong});
    EXPECT_NEAR(findings.front().figure->value, 1010.0, 1e-6);
    EXPECT_EQ(findings.front().limit, (Amount{1000.0, Unit::microsecond}));
    EXPECT_TRUE(findings.front().source.fromMemory);
}

TEST(FitFindings, AreEmptyForAFitThatHolds)
{
    for (const NamedLaw& named : namedLaws) {
        const StrengthDurationFit fit = fitted(sevenThresholds, named.law);
        EXPECT_TRUE(fitFindings(fit, sevenThresholds).empty());
    }
}
