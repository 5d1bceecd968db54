// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"
#include "tests/support/fixed_clock.h"

#include "core/prescribed_days.h"

#include <gtest/gtest.h>
#include <numeric>

using namespace quadrille;
using namespace quadrille::test;
using tests::day;

namespace
{

/// From Monday 2 March 2026.
Course aCourse()
{
    Course course;
    course.startDate = day(2026, 3, 2);
    return course;
}

Plan aPlan(int number, Date from, std::vector<Block> blocks)
{
    Plan plan;
    plan.number = number;
    plan.fromDate = from;
    plan.blocks = std::move(blocks);
    return plan;
}

Block blockOf(int weeks, const Schedule& schedule)
{
    Block block = someBlock();
    block.weeks = weeks;
    block.schedule = schedule;
    return block;
}

} // namespace

TEST(PrescribedDays, AreAllDaysOfTheBlocksWithTheirRestDays)
{
    const std::vector<Plan> plans{
        aPlan(1, day(2026, 3, 2),
              {blockOf(1, WeekdaySet::mondayToFriday()), blockOf(1, DaysPerWeek{3})})};
    const auto days = prescribedDays(aCourse(), plans, {});
    ASSERT_EQ(days.size(), 14U);
    EXPECT_EQ(days[0],
              (PrescribedDay{.day = day(2026, 3, 2), .week = {1}, .block = {0, 0}, .sessions = 1}));
    EXPECT_EQ(days[5],
              (PrescribedDay{.day = day(2026, 3, 7), .week = {1}, .block = {0, 0}, .sessions = 0}));
    EXPECT_EQ(
        days[13],
        (PrescribedDay{
            .day = day(2026, 3, 15), .week = {2}, .block = {0, 1}, .anyDay = true, .sessions = 1}));
}

TEST(PrescribedDays, AgreeWithThePrescriptionOfEachDayOutsidePauses)
{
    Course course = aCourse();
    course.endDate = day(2026, 4, 8);
    const std::vector<Plan> plans{
        aPlan(2, day(2026, 3, 12),
              {blockOf(2, WeekdaySet::everyDay()), blockOf(4, DaysPerWeek{4})}),
        aPlan(1, day(2026, 3, 4), {blockOf(3, WeekdaySet::mondayToFriday())})};
    Pause pause;
    pause.fromDate = day(2026, 3, 20);
    pause.toDate = day(2026, 3, 24);
    const auto days = prescribedDays(course, plans, {pause});
    auto next = days.begin();
    for (Date date = day(2026, 2, 1); date < day(2026, 7, 1); date += std::chrono::days(1)) {
        const bool isThere = next != days.end() && next->day == date;
        const DayPrescription asked = prescriptionOn(course, plans, date);
        EXPECT_EQ(isThere && next->isPaused, contains(pause, date)) << isoDate(date);
        const int expected = contains(pause, date) ? 0 : asked.sessions;
        EXPECT_EQ(isThere ? next->sessions : 0, expected) << isoDate(date);
        EXPECT_EQ(isThere && next->anyDay, asked.anyDay) << isoDate(date);
        next += isThere ? 1 : 0;
    }
    EXPECT_EQ(next, days.end());
    EXPECT_EQ(days.size(), 36U) << "4 March to 8 April";
}

/// Written out: the share of a week, rounded by hand.
TEST(PartOfAWeek, AsksForItsShareOfTheDays)
{
    EXPECT_EQ(daysOfPartWeek({3}, 7), 3);
    EXPECT_EQ(daysOfPartWeek({3}, 6), 3); // 2.57
    EXPECT_EQ(daysOfPartWeek({3}, 4), 2); // 1.71
    EXPECT_EQ(daysOfPartWeek({3}, 3), 1); // 1.29
    EXPECT_EQ(daysOfPartWeek({3}, 1), 0); // 0.43
    EXPECT_EQ(daysOfPartWeek({5}, 6), 4); // 4.29
    EXPECT_EQ(daysOfPartWeek({5}, 1), 1); // 0.71
}

TEST(PartOfAWeek, NeverAsksForMoreDaysThanItHasAndTwoPartsMakeAWeek)
{
    for (int perWeek = 1; perWeek <= 7; ++perWeek) {
        for (int part = 0; part <= 7; ++part) {
            const int days = daysOfPartWeek({perWeek}, part);
            EXPECT_LE(days, part);
            EXPECT_EQ(days + daysOfPartWeek({perWeek}, 7 - part), perWeek);
        }
    }
}
