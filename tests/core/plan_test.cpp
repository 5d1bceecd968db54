// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"

#include "core/plan.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::test;

namespace
{

using std::chrono::days;

const Date monday = *dateFromIso("2026-03-09");

Block blockOf(int weeks, Schedule schedule = WeekdaySet::mondayToFriday(), int sessionsPerDay = 1)
{
    Block block = someBlock();
    block.weeks = weeks;
    block.schedule = schedule;
    block.sessionsPerDay = sessionsPerDay;
    return block;
}

Plan planFrom(int number, Date from, std::vector<Block> blocks)
{
    Plan plan;
    plan.number = number;
    plan.issuedOn = from;
    plan.fromDate = from;
    plan.blocks = std::move(blocks);
    return plan;
}

Course courseFrom(Date start)
{
    Course course;
    course.startDate = start;
    return course;
}

} // namespace

TEST(PlanInForce, OldDaysKeepThePlanTheyWereLivedUnder)
{
    const std::vector<Plan> plans{planFrom(1, monday, {blockOf(4)}),
                                  planFrom(2, monday + days(14), {blockOf(8)})};
    EXPECT_EQ(planInForce(plans, monday - days(1)), std::nullopt);
    EXPECT_EQ(planInForce(plans, monday), 0U);
    EXPECT_EQ(planInForce(plans, monday + days(13)), 0U);
    EXPECT_EQ(planInForce(plans, monday + days(14)), 1U);
    EXPECT_EQ(planInForce(plans, monday + days(400)), 1U);
}

TEST(PlanInForce, TheOneIssuedLastWinsWhateverTheirOrder)
{
    // The third plan takes effect before the second, which was meant for later.
    const std::vector<Plan> plans{planFrom(3, monday + days(7), {blockOf(1)}),
                                  planFrom(1, monday, {blockOf(4)}),
                                  planFrom(2, monday + days(21), {blockOf(8)})};
    EXPECT_EQ(planInForce(plans, monday + days(6)), 1U);
    EXPECT_EQ(planInForce(plans, monday + days(7)), 0U);
    EXPECT_EQ(planInForce(plans, monday + days(30)), 0U);
    EXPECT_EQ(planInForce({}, monday), std::nullopt);
}

TEST(Blocks, FollowOneAnotherByWholeWeeks)
{
    const std::vector<Block> blocks{blockOf(2), blockOf(3), blockOf(1)};
    EXPECT_EQ(totalWeeks(blocks), 6);
    EXPECT_EQ(firstWeekOf(blocks, 0), CourseWeek{1});
    EXPECT_EQ(firstWeekOf(blocks, 1), CourseWeek{3});
    EXPECT_EQ(firstWeekOf(blocks, 2), CourseWeek{6});
    EXPECT_EQ(quadrille::blockOf(blocks, CourseWeek{1}), 0U);
    EXPECT_EQ(quadrille::blockOf(blocks, CourseWeek{2}), 0U);
    EXPECT_EQ(quadrille::blockOf(blocks, CourseWeek{3}), 1U);
    EXPECT_EQ(quadrille::blockOf(blocks, CourseWeek{6}), 2U);
    EXPECT_EQ(quadrille::blockOf(blocks, CourseWeek{7}), std::nullopt);
    EXPECT_EQ(quadrille::blockOf(blocks, CourseWeek{0}), std::nullopt);
    EXPECT_EQ(totalWeeks({}), 0);
}

TEST(SessionsPerWeek, AreDaysTimesSessionsADay)
{
    EXPECT_EQ(sessionsPerWeek(blockOf(4, WeekdaySet::mondayToFriday(), 2)), 10);
    EXPECT_EQ(sessionsPerWeek(blockOf(4, WeekdaySet::everyDay(), 1)), 7);
    EXPECT_EQ(sessionsPerWeek(blockOf(4, DaysPerWeek{3}, 2)), 6);
}

TEST(Prescription, FollowsTheWeekdaysOfTheBlock)
{
    const Course course = courseFrom(monday);
    const std::vector<Plan> plans{
        planFrom(1, monday, {blockOf(1), blockOf(1, WeekdaySet::everyDay(), 3)})};
    EXPECT_EQ(prescriptionOn(course, plans, monday), (DayPrescription{1, false}));
    EXPECT_EQ(prescriptionOn(course, plans, monday + days(5)), DayPrescription{}); // Saturday
    EXPECT_EQ(prescriptionOn(course, plans, monday + days(12)), (DayPrescription{3, false}));
    EXPECT_EQ(prescriptionOn(course, plans, monday + days(14)), DayPrescription{}); // over
}

TEST(Prescription, OfDaysPerWeekIsOfferedEveryDay)
{
    const Course course = courseFrom(monday);
    const std::vector<Plan> plans{planFrom(1, monday, {blockOf(2, DaysPerWeek{3}, 2)})};
    for (int n = 0; n < 14; ++n) {
        EXPECT_EQ(prescriptionOn(course, plans, monday + days(n)), (DayPrescription{2, true}));
    }
}

TEST(Prescription, IsEmptyBeforeTheCourseAndAfterItsEnd)
{
    Course course = courseFrom(monday);
    const std::vector<Plan> plans{
        planFrom(1, monday - days(7), {blockOf(4, WeekdaySet::everyDay())})};
    EXPECT_EQ(prescriptionOn(course, plans, monday - days(1)), DayPrescription{});
    EXPECT_EQ(prescriptionOn(course, plans, monday), (DayPrescription{1, false}));
    course.endDate = monday + days(2);
    EXPECT_EQ(prescriptionOn(course, plans, monday + days(2)), (DayPrescription{1, false}));
    EXPECT_EQ(prescriptionOn(course, plans, monday + days(3)), DayPrescription{});
    EXPECT_EQ(prescriptionOn(course, {}, monday), DayPrescription{});
}

// Weeks are counted from the course's start, so a later plan's blocks are found by course week.
TEST(Prescription, WeeksAreThoseOfTheCourse)
{
    const Course course = courseFrom(monday);
    const std::vector<Plan> plans{
        planFrom(1, monday, {blockOf(2), blockOf(2)}),
        planFrom(2, monday + days(7), {blockOf(1), blockOf(2, WeekdaySet::everyDay(), 2)})};
    EXPECT_EQ(prescriptionOn(course, plans, monday + days(6)), DayPrescription{}); // Sunday, plan 1
    EXPECT_EQ(prescriptionOn(course, plans, monday + days(7)), (DayPrescription{2, false}));
    EXPECT_EQ(prescriptionOn(course, plans, monday + days(21)), DayPrescription{}); // week 4
}

TEST(Draft, OfAnIssuedPlanCopiesItsBlocks)
{
    Plan plan = planFrom(1, monday, {blockOf(2), blockOf(3)});
    plan.course = CourseId(7);
    plan.stimulator = someStimulator();
    plan.stimulator.id = StimulatorId(3);
    const Draft draft = draftFrom(plan);
    EXPECT_EQ(draft.id, std::nullopt);
    EXPECT_EQ(draft.course, CourseId(7));
    EXPECT_EQ(draft.stimulator, StimulatorId(3));
    EXPECT_EQ(draft.blocks, plan.blocks);
}
