// SPDX-License-Identifier: GPL-3.0-or-later
// Plausible ranges are common practice, no source, but for the scale of pain (0 to 10 by its
// definition). UCUM codes: ucum.org; all but cm, s, kg and % from memory.
#include "core/measurement_kinds.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <map>
#include <set>

namespace quadrille
{
namespace
{

using testing::ElementsAre;

constexpr std::int64_t thousand = 1000;

TEST(MeasurementKinds, HaveEachAKeyOfItsOwnAndAUnitInUcum)
{
    std::set<std::string_view> keys;
    for (const MeasurementKind& kind : measurementKinds()) {
        EXPECT_TRUE(keys.insert(kind.key).second) << kind.key;
        EXPECT_EQ(measurementKind(kind.key), &kind);
        const bool ascii = std::ranges::all_of(
            kind.unit, [](char letter) { return letter >= '!' && letter <= '~'; });
        EXPECT_TRUE(ascii) << kind.key;
        EXPECT_EQ(kind.unit.empty(), kind.key == ownKind) << kind.key;
    }
    EXPECT_EQ(measurementKind("blood_pressure"), nullptr);
}

TEST(MeasurementKinds, KeepTheUnitOfTheTradeAsItsCode)
{
    const std::map<std::string_view, std::string_view> units{{"isometric_torque", "N.m"},
                                                             {"isometric_force", "N"},
                                                             {"stimulated_torque", "N.m"},
                                                             {"extensor_lag", "deg"},
                                                             {"range_of_motion", "deg"},
                                                             {"girth", "cm"},
                                                             {"grip_force", "kgf"},
                                                             {"pain_at_rest", "{score}"},
                                                             {"pain_under_load", "{score}"},
                                                             {"timed_up_and_go", "s"},
                                                             {"chair_stands_30_s", "{stands}"},
                                                             {"five_times_sit_to_stand", "s"},
                                                             {"walk_10_m", "m/s"},
                                                             {"own", ""}};
    ASSERT_EQ(measurementKinds().size(), units.size());
    for (const auto& [key, unit] : units) {
        EXPECT_EQ(measurementKind(key)->unit, unit) << key;
    }
}

struct PlausibilityCase {
    std::string_view kind;
    std::int64_t inside; ///< thousandths
    std::int64_t below;
    std::int64_t above;
};

class Plausibility : public testing::TestWithParam<PlausibilityCase>
{
};

TEST_P(Plausibility, TellsAnOddValueFromAUsualOneBothWays)
{
    const PlausibilityCase& one = GetParam();
    const MeasurementKind& kind = *measurementKind(one.kind);
    EXPECT_TRUE(isPlausible(kind, one.inside));
    EXPECT_FALSE(isPlausible(kind, one.below));
    EXPECT_FALSE(isPlausible(kind, one.above));
    EXPECT_TRUE(isPlausible(kind, kind.least)); // the ends belong to it
    EXPECT_TRUE(isPlausible(kind, kind.most));
    EXPECT_FALSE(isPlausible(kind, kind.least - 1));
    EXPECT_FALSE(isPlausible(kind, kind.most + 1));
}

INSTANTIATE_TEST_SUITE_P(
    EveryKind, Plausibility,
    testing::Values(
        PlausibilityCase{"isometric_torque", 94 * thousand, 900, 680 * thousand},
        PlausibilityCase{"isometric_force", 220 * thousand, 700, 2200 * thousand},
        PlausibilityCase{"stimulated_torque", 21 * thousand, 100, 680 * thousand},
        PlausibilityCase{"extensor_lag", 5 * thousand, -5 * thousand, 95 * thousand},
        PlausibilityCase{"range_of_motion", 132 * thousand, -90 * thousand, 1320 * thousand},
        PlausibilityCase{"girth", 44'500, 4450, 445 * thousand},
        PlausibilityCase{"grip_force", 31 * thousand, 310, 310 * thousand},
        PlausibilityCase{"pain_at_rest", 3 * thousand, -1 * thousand, 11 * thousand},
        PlausibilityCase{"pain_under_load", 7 * thousand, -1, 70 * thousand},
        PlausibilityCase{"timed_up_and_go", 14'200, 1420, 1420 * thousand},
        PlausibilityCase{"chair_stands_30_s", 11 * thousand, -1 * thousand, 110 * thousand},
        PlausibilityCase{"five_times_sit_to_stand", 14'200, 1420, 142 * thousand},
        PlausibilityCase{"walk_10_m", 830, 8, 8300},
        PlausibilityCase{"own", 0, -2'000'000'000, 2'000'000'000}),
    [](const auto& one) { return std::string(one.param.kind); });

TEST(Trials, OfTorqueTheHighestCounts)
{
    EXPECT_EQ(valueOfTrials(Counted::best, Better::higher, {61'000, 66'500, 64'000}), 66'500);
}

TEST(Trials, OfATimeTheShortestIsTheBest)
{
    EXPECT_EQ(valueOfTrials(Counted::best, Better::lower, {14'200, 13'900}), 13'900);
}

TEST(Trials, AMeanIsRoundedToTheNearestThousandthHalvesAwayFromZero)
{
    // 10.001 + 10.002 = 20.003, halved 10.0015; a third of 20.000 is 6.66667.
    EXPECT_EQ(valueOfTrials(Counted::mean, Better::lower, {10'001, 10'002}), 10'002);
    EXPECT_EQ(valueOfTrials(Counted::mean, Better::lower, {-10'001, -10'002}), -10'002);
    EXPECT_EQ(valueOfTrials(Counted::mean, Better::lower, {0, 0, 20'000}), 6'667);
    EXPECT_EQ(
        valueOfTrials(Counted::mean, Better::higher, {30'000, 31'000, 32'000, 33'000, 34'000}),
        32'000);
}

TEST(Trials, AreTwoToFiveAndOnlyWhereTheyCount)
{
    EXPECT_FALSE(valueOfTrials(Counted::best, Better::higher, {}));
    EXPECT_FALSE(valueOfTrials(Counted::best, Better::higher, {1}));
    EXPECT_FALSE(valueOfTrials(Counted::mean, Better::higher, {1, 2, 3, 4, 5, 6}));
    EXPECT_FALSE(valueOfTrials(Counted::one, Better::higher, {1, 2}));
}

TEST(Trials, CountAsTheKindSaysAndSayWhere)
{
    for (const MeasurementKind& kind : measurementKinds()) {
        EXPECT_EQ(kind.trials == Counted::one, kind.trialSource.name.empty()) << kind.key;
    }
    EXPECT_EQ(measurementKind(isometricTorque)->trials, Counted::best);
    EXPECT_EQ(measurementKind("grip_force")->trials, Counted::mean); // from memory, and said so
    EXPECT_TRUE(measurementKind("grip_force")->trialSource.fromMemory);
    EXPECT_EQ(measurementKind("pain_at_rest")->trials, Counted::one);
}

TEST(Ucum, IsWrittenForTheUnitsOfTheTradeAndReadBack)
{
    // Products need a dot: N.m, never Nm. Annotations stand in braces (UCUM, §6).
    EXPECT_EQ(ucumOf("N·m"), "N.m");
    EXPECT_EQ(ucumOf("Nm"), "N.m");
    EXPECT_EQ(ucumOf("°"), "deg");
    EXPECT_EQ(ucumOf("m/s"), "m/s");
    EXPECT_EQ(ucumOf("kg"), "kg");
    EXPECT_EQ(ucumOf("stairs"), "{stairs}");
    EXPECT_EQ(ucumOf("steps a minute"), "{steps_a_minute}");
    EXPECT_EQ(tradeUnitOf("N.m"), "N·m");
    EXPECT_EQ(tradeUnitOf("deg"), "°");
    EXPECT_EQ(tradeUnitOf("kgf"), "kg");
    EXPECT_EQ(ucumOf("score"), "{score}");
    EXPECT_EQ(tradeUnitOf("{score}"), "score");
    EXPECT_EQ(tradeUnitOf("{steps_a_minute}"), "steps a minute");
    EXPECT_EQ(tradeUnitOf("mmol/L"), "mmol/L");
}

TEST(Ucum, IsNotMadeOfNothingOrOfLettersThatItDoesNotHave)
{
    EXPECT_FALSE(ucumOf(""));
    EXPECT_FALSE(ucumOf("{}"));
    EXPECT_FALSE(ucumOf("Stühle"));
    EXPECT_EQ(ucumOf("{stairs}"), "{stairs}");
}

TEST(ScoreOfTen, IsPainAndNoScoreThatAPracticeCountsItself)
{
    EXPECT_TRUE(isScoreOfTen("pain_at_rest", "{score}"));
    EXPECT_TRUE(isScoreOfTen("pain_under_load", "{score}"));
    EXPECT_FALSE(isScoreOfTen(ownKind, "{score}"));
    EXPECT_FALSE(isScoreOfTen("kind_of_tomorrow", "{score}"));
    EXPECT_FALSE(isScoreOfTen("timed_up_and_go", "s"));
}

TEST(WalkOfTenMetres, IsASpeed)
{
    // 10 m in 12.0 s: 0.8333 m/s; in 8.7 s: 1.1494 m/s.
    EXPECT_EQ(speedOverTenMetres(12'000), 833);
    EXPECT_EQ(speedOverTenMetres(8'700), 1149);
    EXPECT_FALSE(speedOverTenMetres(0));
    EXPECT_FALSE(speedOverTenMetres(-5));
}

} // namespace
} // namespace quadrille
