// SPDX-License-Identifier: GPL-3.0-or-later
// Weekly figures against the reference table of sessions and against counting days by hand.
#include "tests/core/examples.h"
#include "tests/core/reference_cases.h"

#include "core/caseload_projection.h"
#include "core/course_projection.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace
{

constexpr Date monday = sys_days(2026y / March / 2);

Course courseFrom(Date start)
{
    Course course;
    course.startDate = start;
    return course;
}

Plan planOf(int number, Date from, const std::vector<Block>& blocks)
{
    Plan plan;
    plan.number = number;
    plan.issuedOn = from;
    plan.fromDate = from;
    plan.stimulator = someStimulator();
    plan.blocks = blocks;
    return plan;
}

Block blockWith(int weeks, Milliseconds offTime)
{
    Block block = someBlock();
    block.weeks = weeks;
    block.sites.front().settings.offTime = offTime;
    return block;
}

} // namespace

TEST(PlanProjection, GivesTheReferencesWeekForEachOfItsWeeks)
{
    const ReferenceTable table = referenceSessions();
    Block block = someBlock(); // five sessions a week, as in the first case
    block.weeks = 3;
    block.sites.front().settings = settingsOfCase(table, 0);
    FatigueMemory memory;
    const auto weeks = projectPlan({block}, someStimulator(), memory);
    ASSERT_EQ(weeks.size(), 3U);
    for (const ProjectedWeek& week : weeks) {
        ASSERT_EQ(week.sites.size(), 1U);
        const WeekFigures& figures = *week.sites[0].week;
        EXPECT_EQ(figures.sessions, 5);
        expectCount(table, 0, "week_contractions_full", figures.contractionsCompleted);
        expectCount(table, 0, "week_pulses", figures.pulses);
        EXPECT_EQ(figures.onTime, 1500s);
        expectCell(table, 0, "week_charge_mc", figures.charge->shown());
        EXPECT_NEAR(week.sites[0].fatigue->forceTimeIntegral,
                    table.number(0, "fti_ratio_last_first"), 1e-7);
    }
    EXPECT_EQ(memory.computed(), 1U); // weeks with the same settings cost nothing
}

TEST(PlanProjection, ShowsTheStepFromTheWeekBefore)
{
    FatigueMemory memory;
    // 4/12 s gives 75 contractions in 20 min, 4/6 s gives 120: 60 % more on time.
    const auto weeks = projectPlan({blockWith(2, 12s), blockWith(1, 6s)}, someStimulator(), memory);
    EXPECT_FALSE(weeks[0].sites[0].step);
    EXPECT_EQ(*weeks[1].sites[0].step, 0.0);
    EXPECT_DOUBLE_EQ(*weeks[2].sites[0].step, 0.6);
}

TEST(PlanProjection, FollowsEachMuscleThroughTheBlocks)
{
    Block second = someBlock();
    second.weeks = 1;
    Site rectus = someSite(2);
    rectus.muscle = "rectus femoris";
    second.sites = {rectus, someSite(1)};
    Block first = someBlock();
    first.weeks = 1;
    FatigueMemory memory;
    const auto weeks = projectPlan({first, second}, someStimulator(), memory);
    EXPECT_EQ(weeks[1].sites[0].muscle, "rectus femoris");
    EXPECT_FALSE(weeks[1].sites[0].step); // its first week
    EXPECT_EQ(*weeks[1].sites[1].step, 0.0);
}

TEST(PlanProjection, FollowsAMuscleWrittenInOtherLetters)
{
    // 75 contractions of 4 s at 12 s off, 100 at 8 s: a third more on time.
    Block second = blockWith(1, 8s);
    second.sites.front().muscle = "Vastus Medialis";
    const auto weeks = projectWithoutModel({blockWith(1, 12s), second}, someStimulator());
    ASSERT_EQ(weeks.size(), 2U);
    ASSERT_TRUE(weeks[1].sites.front().step);
    EXPECT_NEAR(*weeks[1].sites.front().step, 1.0 / 3.0, 1e-12);
}

TEST(PlanProjection, KeepsTwoPairsOfPadsOnOneMuscleApart)
{
    Block block = someBlock();
    block.weeks = 2;
    block.sites = {someSite(1), someSite(2)};
    block.sites[1].settings.offTime = 6s;
    FatigueMemory memory;
    const auto weeks = projectPlan({block}, someStimulator(), memory);
    ASSERT_EQ(weeks[0].sites.size(), 2U);
    EXPECT_EQ(weeks[0].sites[0].week->contractionsCompleted, 5 * 75);
    EXPECT_EQ(weeks[0].sites[1].week->contractionsCompleted, 5 * 120);
    EXPECT_EQ(*weeks[1].sites[0].step, 0.0);
    EXPECT_EQ(*weeks[1].sites[1].step, 0.0);
}

TEST(PlanProjection, HasNoFiguresForSettingsThatCannotRun)
{
    Block block = someBlock();
    block.weeks = 1;
    block.sites.front().settings.offTime = 0s;
    FatigueMemory memory;
    const auto weeks = projectPlan({block}, someStimulator(), memory);
    EXPECT_FALSE(weeks[0].sites[0].week);
    EXPECT_FALSE(weeks[0].sites[0].fatigue);
}

TEST(PlanTotals, AddUpAllWeeks)
{
    // Five sessions a week: two weeks of 75 contractions, one of 120; 4 s on time each.
    Block last = blockWith(1, 6s);
    last.sites.front().settings.amplitude.lastTolerated = 40_mA;
    Block first = blockWith(2, 12s);
    first.sites.front().settings.amplitude.lastTolerated = 40_mA;
    const PlanTotals totals = totalsOf(projectWithoutModel({first, last}, someStimulator()));
    EXPECT_EQ(totals.sessions, 15);
    EXPECT_EQ(totals.dose->contractions, 10 * 75 + 5 * 120);
    EXPECT_EQ(totals.dose->onTime, (10 * 75 + 5 * 120) * 4s);
    // 40 mA × 300 µs = 12 µC for each pulse, 200 pulses in a contraction of 4 s at 50 Hz.
    EXPECT_NEAR(totals.charge->shown(), 1350 * 200 * 12e-3, 1e-9);
}

TEST(PlanTotals, CountSitesInTurnOneAfterTheOther)
{
    Block block = blockWith(1, 12s);
    block.sites = {someSite(1), someSite(2)};
    EXPECT_EQ(totalsOf(projectWithoutModel({block}, someStimulator())).dose->contractions, 5 * 75);
    block.siteOrder = SiteOrder::oneAfterAnother;
    EXPECT_EQ(totalsOf(projectWithoutModel({block}, someStimulator())).dose->contractions, 10 * 75);
}

TEST(PlanTotals, AreNotKnownWhileABlockCannotRun)
{
    const PlanTotals totals =
        totalsOf(projectWithoutModel({blockWith(1, 12s), blockWith(1, 0s)}, someStimulator()));
    EXPECT_FALSE(totals.dose);
    EXPECT_FALSE(totals.charge);
    EXPECT_EQ(totals.sessions, 10);
}

TEST(CourseProjection, TakesEachDayFromThePlanInForceOnIt)
{
    // Second plan from Thursday of week 2: three sessions under the first, two under the second.
    const std::vector<Plan> plans{planOf(1, monday, {blockWith(4, 12s)}),
                                  planOf(2, monday + days(10), {blockWith(4, 6s)})};
    FatigueMemory memory;
    const auto weeks = projectCourse(courseFrom(monday), plans, memory);
    ASSERT_EQ(weeks.size(), 4U);
    EXPECT_EQ(weeks[0].sites[0].week->contractionsCompleted, 5 * 75);
    EXPECT_EQ(weeks[1].sites[0].week->contractionsCompleted, 3 * 75 + 2 * 120);
    EXPECT_EQ(weeks[1].sites[0].week->sessions, 5);
    EXPECT_EQ(weeks[2].sites[0].week->contractionsCompleted, 5 * 120);
    EXPECT_LT(weeks[1].sites[0].fatigue->forceTimeIntegral,
              weeks[0].sites[0].fatigue->forceTimeIntegral);
}

TEST(CourseProjection, CountsDaysOfThePatientsChoiceByTheWeek)
{
    Block block = someBlock();
    block.schedule = DaysPerWeek{3};
    block.sessionsPerDay = 2;
    FatigueMemory memory;
    const auto weeks = projectCourse(courseFrom(monday), {planOf(1, monday, {block})}, memory);
    EXPECT_EQ(weeks[0].sites[0].week->sessions, 6);
}

TEST(CourseProjection, EndsWithTheCourse)
{
    Course course = courseFrom(monday);
    course.endDate = monday + days(8); // Tuesday of week 2
    FatigueMemory memory;
    const auto weeks = projectCourse(course, {planOf(1, monday, {blockWith(4, 12s)})}, memory);
    ASSERT_EQ(weeks.size(), 2U);
    EXPECT_EQ(weeks[1].sites[0].week->sessions, 2);
}

TEST(CourseProjection, OfACourseWithoutPlanIsEmpty)
{
    FatigueMemory memory;
    EXPECT_TRUE(projectCourse(courseFrom(monday), {}, memory).empty());
}

TEST(CaseloadProjection, GivesTheSameOnAnyNumberOfCores)
{
    std::vector<CourseToProject> courses;
    for (int i = 0; i < 12; ++i) {
        courses.push_back({courseFrom(monday),
                           {planOf(1, monday, {blockWith(2, 8s + std::chrono::seconds(i))})}});
    }
    std::size_t reports = 0;
    const auto progress = [&reports](std::size_t done, std::size_t all) {
        EXPECT_EQ(done, ++reports);
        EXPECT_EQ(all, 12U);
    };
    const CaseloadProjection several = projectCaseload(courses, 4, {}, progress);
    const CaseloadProjection alone = projectCaseload(courses, 1, {}, {});
    EXPECT_EQ(reports, 12U);
    EXPECT_FALSE(several.wasStopped);
    for (std::size_t i = 0; i < courses.size(); ++i) {
        ASSERT_EQ(several.courses[i].size(), 2U);
        EXPECT_EQ(several.courses[i][0].sites[0].fatigue->peak,
                  alone.courses[i][0].sites[0].fatigue->peak);
    }
}

TEST(CaseloadProjection, StopsWhenAskedTo)
{
    std::vector<CourseToProject> courses(
        50, {courseFrom(monday), {planOf(1, monday, {blockWith(1, 12s)})}});
    std::stop_source stop;
    const CaseloadProjection projection =
        projectCaseload(courses, 2, stop.get_token(), [&stop](std::size_t done, std::size_t) {
            if (done == 3) {
                stop.request_stop();
            }
        });
    EXPECT_TRUE(projection.wasStopped);
    EXPECT_GE(projection.done, 3U);
    EXPECT_LE(projection.done, 5U); // the others at work finish the course they hold
}

TEST(CaseloadProjection, HandsOnWhatItsProgressThrows)
{
    const std::vector<CourseToProject> courses(
        20, {courseFrom(monday), {planOf(1, monday, {blockWith(1, 12s)})}});
    const auto progress = [](std::size_t done, std::size_t) {
        if (done == 2) {
            throw std::runtime_error("the window is gone");
        }
    };
    EXPECT_THROW((void)projectCaseload(courses, 2, {}, progress), std::runtime_error);
}

TEST(CaseloadProjection, OfNobodyIsEmpty)
{
    const CaseloadProjection projection = projectCaseload({}, 0, {}, {});
    EXPECT_TRUE(projection.courses.empty());
    EXPECT_FALSE(projection.wasStopped);
}
