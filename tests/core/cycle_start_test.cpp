// SPDX-License-Identifier: GPL-3.0-or-later
// A unit that begins with its off time, through everything that rests on its timing. By hand: 10 s
// on and 50 s off in 9 min 59 s are ten contractions where it begins with the on time (the tenth
// ends at 550 s), and nine whole ones and 9 s of a tenth where it waits 50 s first.
#include "tests/core/examples.h"

#include "core/course_projection.h"
#include "core/lived_days.h"
#include "core/plan_figures.h"
#include "core/settings_comparison.h"
#include "core/settings_search.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace
{

Stimulator unitThatBegins(CycleStart start)
{
    Stimulator unit = someStimulator();
    unit.cycleStart = start;
    unit.offTime = {1s, 60s, 1s, 12s};
    unit.sessionLength = {1s, 60min, 1s, 20min};
    return unit;
}

Settings tenSecondsInAMinute()
{
    Settings settings = someSettings();
    settings.onTime = 10s;
    settings.offTime = 50s;
    settings.sessionLength = 9min + 59s;
    return settings;
}

Block blockOfThem()
{
    Block block = someBlock();
    block.sites.front().settings = tenSecondsInAMinute();
    return block;
}

/// The model over nine contractions, as a unit without a wait would give them.
double ratioOfNine()
{
    Settings nine = tenSecondsInAMinute();
    nine.sessionLength = 9min + 9s;
    return predictFatigue(nine, RampHabit::includedInOnTime)->lastToFirst->forceTimeIntegral;
}

} // namespace

TEST(AUnitThatWaitsFirst, GivesABlockOneContractionLess)
{
    EXPECT_EQ(blockFigures(blockOfThem(), unitThatBegins(CycleStart::withOn)).contractions, 10);
    const BlockFigures figures = blockFigures(blockOfThem(), unitThatBegins(CycleStart::withOff));
    EXPECT_EQ(figures.contractions, 9);
    EXPECT_EQ(figures.weekOnTime, 5 * 99s);
}

TEST(AUnitThatWaitsFirst, IsProjectedWithTheContractionsThatItGives)
{
    FatigueMemory memory;
    const auto weeks = projectPlan({blockOfThem()}, unitThatBegins(CycleStart::withOff), memory);
    const ProjectedSite& site = weeks.at(0).sites.at(0);
    EXPECT_EQ(site.week->contractionsCompleted, 5 * 9);
    EXPECT_DOUBLE_EQ(site.fatigue->forceTimeIntegral, ratioOfNine());
}

TEST(AUnitThatWaitsFirst, IsComparedWithTheContractionsThatItGives)
{
    SettingsCase given;
    given.settings = tenSecondsInAMinute();
    given.start = CycleStart::withOff;
    FatigueMemory memory;
    const auto compared = compareSettings({given}, memory);
    const auto value = [&](ComparedFigure figure) {
        return compared->at(0).value(figure).value->value;
    };
    EXPECT_EQ(value(ComparedFigure::contractionsCompleted), 9.0);
    EXPECT_DOUBLE_EQ(value(ComparedFigure::fatigueRatioIntegral), ratioOfNine());
}

TEST(AUnitThatWaitsFirst, NeedsRoomForTheWaitInASearch)
{
    // 100 s of on time in at most 600 s: ten rests of 50 s, not nine of 55 s.
    Settings settings = tenSecondsInAMinute();
    settings.sessionLength = 10min;
    const auto found =
        longestOffTime(settings, unitThatBegins(CycleStart::withOff), KeptDose::totalOnTime, 10min);
    EXPECT_EQ(std::get<SearchFound>(*found).settings.offTime, 50s);
    const auto withOn =
        longestOffTime(settings, unitThatBegins(CycleStart::withOn), KeptDose::totalOnTime, 10min);
    EXPECT_EQ(std::get<SearchFound>(*withOn).settings.offTime, 55s);
    // With at least 1 s of rest, ten contractions need 110 s there, and 109 s here.
    const auto tooShort = [&](CycleStart start) {
        const auto answer =
            longestOffTime(settings, unitThatBegins(start), KeptDose::totalOnTime, 60s);
        return std::get<SearchRefusal>(*answer);
    };
    EXPECT_EQ(tooShort(CycleStart::withOff).reason, NoSetting::sessionTooShort);
    EXPECT_NEAR(tooShort(CycleStart::withOff).limit.value * 60.0, 110.0, 1e-9);
    EXPECT_NEAR(tooShort(CycleStart::withOn).limit.value * 60.0, 109.0, 1e-9);
    EXPECT_EQ(std::get<SearchFound>(
                  *sessionForContractions(settings, unitThatBegins(CycleStart::withOff), 10))
                  .settings.sessionLength,
              10min);
}

TEST(AUnitThatWaitsFirst, FindsAnOffTimeForOneContractionToo)
{
    Settings settings = tenSecondsInAMinute();
    settings.sessionLength = 61s; // 50 s of waiting, 10 s on
    const auto found =
        longestOffTime(settings, unitThatBegins(CycleStart::withOff), KeptDose::contractions, 1min);
    EXPECT_EQ(std::get<SearchFound>(*found).settings.offTime, 50s);
    EXPECT_EQ(std::get<SearchFound>(*found).timing.contractionsCompleted, 1);
}

TEST(AUnitThatWaitsFirst, IsJudgedByTheRatioOfItsOwnContractions)
{
    FatigueMemory memory;
    const Stimulator unit = unitThatBegins(CycleStart::withOff);
    const auto found = smallestOffTime(tenSecondsInAMinute(), unit, ratioOfNine() - 1e-9,
                                       KeptLength::session, memory);
    ASSERT_TRUE(std::holds_alternative<SearchFound>(*found));
    const SearchFound& answer = std::get<SearchFound>(*found);
    const auto kept =
        predictFatigue(withoutLead(answer.settings, answer.timing), RampHabit::includedInOnTime);
    EXPECT_GE(kept->lastToFirst->forceTimeIntegral, ratioOfNine() - 1e-9);
    EXPECT_LE(answer.settings.offTime, 50s);
}

TEST(AUnitThatWaitsFirst, IsCountedInTheDiaryWithTheContractionsThatItGave)
{
    CourseRecords records;
    records.course.startDate = sys_days(2026y / March / 2);
    Plan plan;
    plan.number = 1;
    plan.issuedOn = plan.fromDate = records.course.startDate;
    plan.stimulator = unitThatBegins(CycleStart::withOff);
    plan.blocks = {blockOfThem()};
    records.plans = {plan};
    DiaryEntry entry;
    entry.day = records.course.startDate;
    entry.duration = 9min + 59s;
    records.entries = {entry};
    const CourseAsLived lived = courseAsLived(records, {}, records.course.startDate + days(1));
    const LivedDay* day = lived.find(records.course.startDate);
    ASSERT_TRUE(day);
    EXPECT_EQ(day->dose.delivered.contractions, 9);
    EXPECT_EQ(day->dose.delivered.onTime, 99s);
}
