// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/fixed_clock.h"

#include "core/measurement_change.h"
#include "core/plan.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille
{
namespace
{

using testing::IsEmpty;
using testing::SizeIs;
using tests::day;

Measurement torque(Date on, Side side, std::int64_t thousandths, std::int64_t key = 0)
{
    Measurement made;
    made.id = MeasurementId(key);
    made.measuredOn = on;
    made.kind = isometricTorque;
    made.subject = "quadriceps";
    made.method = "knee at 60°";
    made.unit = "N.m";
    made.side = side;
    made.thousandths = thousandths;
    return made;
}

const Date baseline = day(2026, 2, 9);
const Date later = day(2026, 3, 12);

TEST(SymmetryIndex, IsTheInvolvedOverTheUninvolvedSide)
{
    // Limb symmetry index = involved / uninvolved x 100; 68 of 94 N·m: 72.34 %.
    EXPECT_NEAR(symmetryIndex(68'000, 94'000).value(), 72.34, 0.005);
    EXPECT_NEAR(symmetryIndex(94'000, 68'000).value(), 138.24, 0.005);
    EXPECT_EQ(symmetryIndex(90'000, 90'000), 100.0);
    EXPECT_FALSE(symmetryIndex(68'000, 0));
    EXPECT_FALSE(symmetryIndex(68'000, -1));
}

TEST(Series, HoldValuesOfOneKindSubjectMethodAndUnit)
{
    const Measurement one = torque(baseline, Side::right, 41'000);
    const std::vector<MeasurementSeries> all = seriesOf({one});
    ASSERT_THAT(all, SizeIs(1));
    EXPECT_TRUE(isOfSeries(torque(later, Side::left, 91'000), all.front()));
    EXPECT_TRUE(isSameSeries(all.front(), seriesOf({torque(later, Side::left, 91'000)}).front()));
    for (std::string Measurement::*part :
         {&Measurement::kind, &Measurement::subject, &Measurement::method, &Measurement::unit}) {
        Measurement other = one;
        other.*part = "another";
        EXPECT_FALSE(isOfSeries(other, all.front())) << other.*part;
        EXPECT_FALSE(isSameSeries(seriesOf({other}).front(), all.front()));
    }
}

TEST(SymmetryIndex, IsOnlyOfTorqueAndForceInTheCourseOfAOneSidedProblem)
{
    for (const MeasurementKind& kind : measurementKinds()) {
        const bool strength = kind.key == "isometric_torque" || kind.key == "isometric_force" ||
                              kind.key == "grip_force";
        for (const auto side : {TreatedSide::left, TreatedSide::right}) {
            EXPECT_EQ(symmetryApplies(kind, side), strength) << kind.key;
        }
        EXPECT_FALSE(symmetryApplies(kind, TreatedSide::both)) << kind.key;
        EXPECT_FALSE(symmetryApplies(kind, std::nullopt)) << kind.key;
    }
}

TEST(SymmetryIndex, IsTakenFromTheTwoSidesOfOneDay)
{
    const auto series =
        seriesOf({torque(baseline, Side::right, 41'000), torque(baseline, Side::left, 91'000),
                  torque(day(2026, 2, 26), Side::right, 55'000), torque(later, Side::right, 68'000),
                  torque(later, Side::left, 94'000)});
    ASSERT_THAT(series, SizeIs(1));
    const auto ofRight = symmetryOf(series[0], TreatedSide::right);
    ASSERT_THAT(ofRight, SizeIs(2)); // on 26 February one side only
    EXPECT_EQ(ofRight[0].day, baseline);
    EXPECT_NEAR(ofRight[0].percent, 45.05, 0.005); // 41 / 91
    EXPECT_NEAR(ofRight[1].percent, 72.34, 0.005); // 68 / 94
    const auto ofLeft = symmetryOf(series[0], TreatedSide::left);
    ASSERT_THAT(ofLeft, SizeIs(2));
    EXPECT_NEAR(ofLeft[1].percent, 138.24, 0.005);
    EXPECT_THAT(symmetryOf(series[0], TreatedSide::both), IsEmpty());
    EXPECT_THAT(symmetryOf(series[0], std::nullopt), IsEmpty());
}

TEST(PercentOfMaximum, IsTheEvokedTorqueOverTheVoluntaryMaximum)
{
    // Evoked torque / MVIC x 100: 21 of 68 N·m is 30.88 %.
    EXPECT_NEAR(percentOfMaximum(21'000, 68'000).value(), 30.88, 0.005);
    EXPECT_FALSE(percentOfMaximum(21'000, 0));
}

TEST(PercentOfMaximum, IsOfTheSameMuscleSideAndJointAngleUpToThatDay)
{
    Measurement evoked = torque(later, Side::right, 21'000);
    evoked.kind = stimulatedTorque;
    Measurement withdrawn = torque(later, Side::right, 200'000, 9);
    withdrawn.withdrawn = true;
    Measurement otherAngle = torque(later, Side::right, 120'000, 8);
    otherAngle.method = "knee at 90°";
    Measurement otherMuscle = torque(later, Side::right, 50'000, 7);
    otherMuscle.subject = "hamstrings";
    const std::vector<Measurement> all{torque(baseline, Side::right, 41'000, 1),
                                       torque(later, Side::right, 68'000, 2),
                                       torque(later, Side::left, 94'000, 3),
                                       torque(later + std::chrono::days(7), Side::right, 75'000, 4),
                                       otherMuscle,
                                       otherAngle,
                                       withdrawn,
                                       evoked};
    const auto share = shareOfMaximum(evoked, all);
    ASSERT_TRUE(share);
    EXPECT_EQ(share->maximum.thousandths, 68'000);
    EXPECT_NEAR(share->percent, 30.88, 0.005);
    evoked.measuredOn = day(2026, 3, 1);
    EXPECT_EQ(shareOfMaximum(evoked, all)->maximum.thousandths, 41'000);
    evoked.measuredOn = day(2026, 1, 1);
    EXPECT_FALSE(shareOfMaximum(evoked, all));
}

TEST(ChangeSinceBaseline, IsTheLatestMinusTheFirstOfTheSameThing)
{
    const auto series = seriesOf(
        {torque(later, Side::right, 68'000, 3), torque(baseline, Side::right, 41'000, 1),
         torque(day(2026, 2, 26), Side::right, 55'000, 2), torque(later, Side::left, 94'000, 4)});
    ASSERT_THAT(series, SizeIs(1));
    const SideSummary right = summaryOf(series[0], Side::right);
    EXPECT_EQ(right.baseline->measuredOn, baseline);
    EXPECT_EQ(right.latest->thousandths, 68'000);
    EXPECT_EQ(right.change, 27'000);
    const SideSummary left = summaryOf(series[0], Side::left);
    EXPECT_EQ(left.latest, left.baseline);
    EXPECT_FALSE(left.change) << "one value is no change";
    EXPECT_FALSE(summaryOf(series[0], Side::middle).latest);
}

TEST(ChangeSinceBaseline, IsNeverTakenAcrossAnotherJointAngleMuscleOrUnit)
{
    Measurement otherAngle = torque(later, Side::right, 68'000);
    otherAngle.method = "knee at 90°";
    Measurement otherMuscle = torque(later, Side::right, 30'000);
    otherMuscle.subject = "hamstrings";
    Measurement otherUnit = torque(later, Side::right, 30'000);
    otherUnit.unit = "N";
    const auto series =
        seriesOf({torque(baseline, Side::right, 41'000), otherAngle, otherMuscle, otherUnit});
    ASSERT_THAT(series, SizeIs(4));
    for (const MeasurementSeries& one : series) {
        EXPECT_FALSE(summaryOf(one, Side::right).change);
    }
}

TEST(ChangeSinceBaseline, LeavesOutWhatWasWithdrawn)
{
    Measurement mistaken = torque(baseline, Side::right, 410'000);
    mistaken.withdrawn = true;
    const auto series = seriesOf({mistaken, torque(day(2026, 2, 10), Side::right, 41'000),
                                  torque(later, Side::right, 68'000)});
    ASSERT_THAT(series, SizeIs(1));
    EXPECT_EQ(summaryOf(series[0], Side::right).change, 27'000);
}

TEST(Series, StandInTheOrderOfTheCatalogueTheOwnOnesLast)
{
    Measurement own = torque(baseline, Side::middle, 12'000);
    own.kind = ownKind;
    Measurement pain = torque(baseline, Side::middle, 3'000);
    pain.kind = "pain_at_rest";
    const auto series = seriesOf({own, pain, torque(baseline, Side::left, 1)});
    ASSERT_THAT(series, SizeIs(3));
    EXPECT_EQ(series[0].kind, isometricTorque);
    EXPECT_EQ(series[1].kind, "pain_at_rest");
    EXPECT_EQ(series[2].kind, ownKind);
}

/// A change, the kind's published threshold, and whether the change reaches it.
struct JudgedCase {
    std::string_view name;
    std::string_view kind;
    std::int64_t change; ///< thousandths
    ThresholdGroup group;
    bool reached;
    bool fromMemory;
};

class Judgement : public testing::TestWithParam<JudgedCase>
{
};

TEST_P(Judgement, HoldsAChangeAgainstThePublishedThreshold)
{
    const JudgedCase& one = GetParam();
    const auto judgement = judgeChange(*measurementKind(one.kind), one.change);
    const auto& side = one.reached ? judgement.reached : judgement.notReached;
    const auto found = std::ranges::find(side, one.group, &ChangeThreshold::group);
    ASSERT_NE(found, side.end());
    EXPECT_EQ(found->source.fromMemory, one.fromMemory);
    EXPECT_FALSE(found->source.name.empty());
}

using G = ThresholdGroup;
INSTANTIATE_TEST_SUITE_P(
    Published, Judgement,
    testing::Values(
        // Timed up and go, detectable: 1.10 s, one rater, knee arthritis grade 1 to 3, and 1.14 s
        // between raters (BMC Musculoskelet Disord 2015;16:174); 2.49 s around hip and knee
        // replacement (Kennedy 2005, from memory).
        JudgedCase{"TugOneRaterReached", "timed_up_and_go", -1'100, G::kneeArthritisSameRater, true,
                   false},
        JudgedCase{"TugOneRaterNotReached", "timed_up_and_go", -1'099, G::kneeArthritisSameRater,
                   false, false},
        JudgedCase{"TugTwoRatersNotReached", "timed_up_and_go", 1'100, G::kneeArthritisTwoRaters,
                   false, false},
        JudgedCase{"TugSlowerCountsToo", "timed_up_and_go", 1'140, G::kneeArthritisTwoRaters, true,
                   false},
        JudgedCase{"TugReplacement", "timed_up_and_go", -2'490, G::hipOrKneeReplacement, true,
                   true},
        JudgedCase{"TugReplacementNotReached", "timed_up_and_go", -2'480, G::hipOrKneeReplacement,
                   false, true},
        // 30 s chair stand, detectable in one person: about 2.5 stands in early knee arthritis
        // (Gill 2022); 0.96 around knee replacement (n = 33).
        JudgedCase{"ChairTwoStands", "chair_stands_30_s", 2'000, G::earlyKneeArthritis, false,
                   false},
        JudgedCase{"ChairThreeStands", "chair_stands_30_s", 3'000, G::earlyKneeArthritis, true,
                   false},
        JudgedCase{"ChairOneStandAfterReplacement", "chair_stands_30_s", 1'000, G::kneeReplacement,
                   true, false},
        // Five times sit to stand, important: around 3 s in limited community ambulators, 1.9 s
        // and 0.72 s at home (Martín-San Agustín 2021); 1.7 s in lung disease (Jones 2013, from
        // memory).
        JudgedCase{"StandsStroke", "five_times_sit_to_stand", -3'000, G::strokeLimitedCommunity,
                   true, false},
        JudgedCase{"StandsStrokeNotReached", "five_times_sit_to_stand", -2'600,
                   G::strokeLimitedCommunity, false, false},
        JudgedCase{"StandsAtHome", "five_times_sit_to_stand", -1'900, G::strokeHouseholdFourWeeks,
                   true, false},
        JudgedCase{"StandsAtHomeLater", "five_times_sit_to_stand", -720,
                   G::strokeHouseholdEightWeeks, true, false},
        JudgedCase{"StandsLung", "five_times_sit_to_stand", -1'690, G::lungDisease, false, true},
        // Speed, important: 0.068 to 0.115 m/s in arthritis (4.1 to 6.9 m/min); 0.05 small, 0.10
        // substantial in older adults and 0.16 after stroke (both from memory).
        JudgedCase{"WalkArthritis", walkTenMetres, 68, G::kneeOrHipArthritisLeast, true, false},
        JudgedCase{"WalkArthritisMost", walkTenMetres, 110, G::kneeOrHipArthritisMost, false,
                   false},
        JudgedCase{"WalkOlderSmall", walkTenMetres, 50, G::olderSmall, true, true},
        JudgedCase{"WalkOlderSubstantial", walkTenMetres, 99, G::olderSubstantial, false, true},
        JudgedCase{"WalkStroke", walkTenMetres, -160, G::stroke, true, true},
        // Pain 0 to 10, important: 1 point (Salaffi 2004, n = 825).
        JudgedCase{"PainOnePoint", "pain_at_rest", -1'000, G::musculoskeletalPain, true, false},
        JudgedCase{"PainHalfAPoint", "pain_under_load", -500, G::musculoskeletalPain, false, false},
        // A goniometer errs by about 5 degrees (from memory).
        JudgedCase{"LagFiveDegrees", "extensor_lag", -5'000, G::anybody, true, true},
        JudgedCase{"MotionFourDegrees", "range_of_motion", 4'000, G::anybody, false, true}),
    [](const auto& one) { return std::string(one.param.name); });

// Each threshold of its own, at its value and one thousandth below, as published (sources above;
// Salaffi 2004 for "much better" too).
TEST(Judgement, FallsAtEachThresholdItself)
{
    struct Row {
        std::string_view kind;
        G group;
        std::int64_t thousandths;
    };
    for (const Row& row : {
             Row{"extensor_lag", G::anybody, 5'000},
             Row{"range_of_motion", G::anybody, 5'000},
             Row{"timed_up_and_go", G::kneeArthritisSameRater, 1'100},
             Row{"timed_up_and_go", G::kneeArthritisTwoRaters, 1'140},
             Row{"timed_up_and_go", G::hipOrKneeReplacement, 2'490},
             Row{"chair_stands_30_s", G::kneeReplacement, 960},
             Row{"chair_stands_30_s", G::earlyKneeArthritis, 2'500},
             Row{"five_times_sit_to_stand", G::strokeHouseholdEightWeeks, 720},
             Row{"five_times_sit_to_stand", G::lungDisease, 1'700},
             Row{"five_times_sit_to_stand", G::strokeHouseholdFourWeeks, 1'900},
             Row{"five_times_sit_to_stand", G::strokeLimitedCommunity, 3'000},
             Row{walkTenMetres, G::olderSmall, 50},
             Row{walkTenMetres, G::kneeOrHipArthritisLeast, 68},
             Row{walkTenMetres, G::olderSubstantial, 100},
             Row{walkTenMetres, G::kneeOrHipArthritisMost, 115},
             Row{walkTenMetres, G::stroke, 160},
         }) {
        const MeasurementKind& kind = *measurementKind(row.kind);
        const std::int64_t sign = kind.better == Better::lower ? -1 : 1;
        const auto holds = [&](const std::vector<ChangeThreshold>& side) {
            return std::ranges::find(side, row.group, &ChangeThreshold::group) != side.end();
        };
        EXPECT_TRUE(holds(judgeChange(kind, sign * row.thousandths).reached)) << row.kind;
        EXPECT_TRUE(holds(judgeChange(kind, sign * (row.thousandths - 1)).notReached)) << row.kind;
    }
}

TEST(Judgement, OfPainTellsTheLeastImprovementFromMuchBetter)
{
    for (const char* kind : {"pain_at_rest", "pain_under_load"}) {
        const auto at = [&](std::int64_t change) {
            return judgeChange(*measurementKind(kind), change).reached;
        };
        EXPECT_THAT(at(-999), IsEmpty());
        ASSERT_THAT(at(-1'000), SizeIs(1));
        EXPECT_EQ(at(-1'000)[0].meaning, ThresholdMeaning::important);
        EXPECT_THAT(at(-1'999), SizeIs(1));
        ASSERT_THAT(at(-2'000), SizeIs(2));
        EXPECT_EQ(at(-2'000)[1].meaning, ThresholdMeaning::muchBetter);
    }
}

TEST(Judgement, SaysNothingWhereNothingWasPublished)
{
    for (const char* kind : {"isometric_torque", "isometric_force", "stimulated_torque", "girth",
                             "grip_force", "own"}) {
        const auto judgement = judgeChange(*measurementKind(kind), 50'000);
        EXPECT_THAT(judgement.reached, IsEmpty()) << kind;
        EXPECT_THAT(judgement.notReached, IsEmpty()) << kind;
    }
}

TEST(Judgement, OfMorePainNamesNoThresholdSinceOnlyLessPainWasStudied)
{
    const auto worse = judgeChange(*measurementKind("pain_at_rest"), 3'000);
    EXPECT_EQ(worse.better, false);
    EXPECT_THAT(worse.reached, IsEmpty());
    EXPECT_THAT(worse.notReached, IsEmpty());
    EXPECT_THAT(judgeChange(*measurementKind("pain_at_rest"), -3'000).reached, SizeIs(2));
}

TEST(Judgement, KnowsWhichWayIsBetter)
{
    EXPECT_EQ(judgeChange(*measurementKind("isometric_torque"), 1).better, true);
    EXPECT_EQ(judgeChange(*measurementKind("isometric_torque"), -1).better, false);
    EXPECT_EQ(judgeChange(*measurementKind("timed_up_and_go"), -1).better, true);
    EXPECT_EQ(judgeChange(*measurementKind("timed_up_and_go"), 1).better, false);
    EXPECT_EQ(judgeChange(*measurementKind("girth"), 1).better, std::nullopt);
    EXPECT_EQ(judgeChange(*measurementKind("isometric_torque"), 0).better, std::nullopt);
}

TEST(Thresholds, AreEachOfAKindOfTheCatalogueAndStandTheSmallestFirst)
{
    for (const MeasurementKind& kind : measurementKinds()) {
        const auto published = thresholdsOf(kind.key);
        EXPECT_TRUE(std::ranges::is_sorted(published, {}, &ChangeThreshold::thousandths))
            << kind.key;
        for (const ChangeThreshold& one : published) {
            EXPECT_GT(one.thousandths, 0) << kind.key;
            EXPECT_FALSE(one.source.name.empty()) << kind.key;
        }
    }
}

TEST(TreatedSideOfACourse, IsWhatWasSaidElseTheSideOfAllItsSites)
{
    Course course;
    EXPECT_FALSE(treatedSideOf(course, {}));
    Plan plan;
    plan.blocks.resize(2);
    EXPECT_FALSE(treatedSideOf(course, {plan}));
    Site left;
    left.side = Side::left;
    plan.blocks[0].sites.push_back(left);
    plan.blocks[1].sites.push_back(left);
    EXPECT_EQ(treatedSideOf(course, {plan}), TreatedSide::left);
    Plan next = plan;
    next.number = 2;
    next.blocks[1].sites.emplace_back(); // a site is of the right, unless it says otherwise
    EXPECT_EQ(treatedSideOf(course, {plan, next}), TreatedSide::both);
    course.treatedSide = TreatedSide::right;
    EXPECT_EQ(treatedSideOf(course, {plan, next}), TreatedSide::right);
}

} // namespace
} // namespace quadrille
