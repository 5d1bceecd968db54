// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/calendar.h"

#include <gtest/gtest.h>
#include <string>

using namespace quadrille;
using namespace std::chrono_literals;

namespace
{

constexpr Date day(int year, unsigned month, unsigned dayOfMonth)
{
    return std::chrono::year_month_day{std::chrono::year(year), std::chrono::month(month),
                                       std::chrono::day(dayOfMonth)};
}

} // namespace

// ISO 8601 calendar dates; the weekday of 2026-03-09 is from an almanac: Monday.
TEST(IsoDate, IsYearMonthDay)
{
    EXPECT_EQ(isoDate(day(2026, 3, 9)), "2026-03-09");
    EXPECT_EQ(isoDate(day(1931, 12, 31)), "1931-12-31");
    EXPECT_EQ(dateFromIso("2026-03-09"), day(2026, 3, 9));
    EXPECT_EQ(Weekday(*dateFromIso("2026-03-09")), std::chrono::Monday);
}

TEST(IsoDate, ComesBackAsItWasWrittenOnEveryDayOfFiveCenturies)
{
    for (Date date = day(1800, 1, 1); date <= day(2300, 1, 1); date += std::chrono::days(1)) {
        const std::optional<Date> back = dateFromIso(isoDate(date));
        ASSERT_EQ(back, date) << isoDate(date);
    }
}

// Gregorian leap years: every fourth, but of the full centuries only those divisible by 400.
TEST(IsoDate, KnowsLeapDays)
{
    EXPECT_TRUE(dateFromIso("2024-02-29"));
    EXPECT_TRUE(dateFromIso("2000-02-29"));
    EXPECT_FALSE(dateFromIso("2023-02-29"));
    EXPECT_FALSE(dateFromIso("1900-02-29"));
    EXPECT_FALSE(dateFromIso("2024-02-30"));
}

TEST(IsoDate, RefusesWhatIsNoSuchDate)
{
    for (const std::string text :
         {"", "2026-3-9", "09-03-2026", "2026/03/09", "2026-13-01", "2026-00-10", "2026-01-00",
          "2026-04-31", " 2026-03-09", "2026-03-09 ", "2026-03-0x", "+026-03-09", "-026-03-09",
          "2026-03-091", "20260309", "2026-03-+9", "２０２６-03-09"}) {
        EXPECT_FALSE(dateFromIso(text)) << "'" << text << "'";
    }
}

TEST(IsoMoment, IsInUniversalTimeToTheSecond)
{
    const Moment moment = Moment(day(2026, 3, 9)) + 10h + 42min + 7s;
    EXPECT_EQ(isoMoment(moment), "2026-03-09T10:42:07Z");
    EXPECT_EQ(momentFromIso("2026-03-09T10:42:07Z"), moment);
    // Before 1970 too.
    const Moment early = Moment(day(1969, 12, 31)) + 23h + 59min + 59s;
    EXPECT_EQ(isoMoment(early), "1969-12-31T23:59:59Z");
    EXPECT_EQ(momentFromIso(isoMoment(early)), early);
}

TEST(IsoMoment, RefusesWhatIsNoSuchMoment)
{
    for (const std::string text :
         {"", "2026-03-09", "2026-03-09T10:42:07", "2026-03-09 10:42:07Z", "2026-03-09T24:00:00Z",
          "2026-03-09T10:60:00Z", "2026-03-09T10:42:60Z", "2026-02-29T10:42:07Z",
          "2026-03-09T10:42:07z", "2026-03-09T1a:42:07Z"}) {
        EXPECT_FALSE(momentFromIso(text)) << "'" << text << "'";
    }
}

// Week n of a course is days 7(n−1)+1 … 7n from the start date.
TEST(CourseWeek, BeginsOnTheWeekdayOfTheStart)
{
    const Date start = day(2026, 3, 5); // a Thursday
    EXPECT_FALSE(courseWeekOf(start, start - std::chrono::days(1)));
    EXPECT_EQ(courseWeekOf(start, start), CourseWeek{1});
    EXPECT_EQ(courseWeekOf(start, start + std::chrono::days(6)), CourseWeek{1});
    EXPECT_EQ(courseWeekOf(start, start + std::chrono::days(7)), CourseWeek{2});
    EXPECT_EQ(courseWeekOf(start, start + std::chrono::days(7 * 26)), CourseWeek{27});
    for (int n = 1; n <= 60; ++n) {
        const Date first = firstDayOf(start, CourseWeek{n});
        EXPECT_EQ(Weekday(first), Weekday(start));
        EXPECT_EQ(courseWeekOf(start, first), CourseWeek{n});
        EXPECT_EQ(courseWeekOf(start, first + std::chrono::days(6)), CourseWeek{n});
    }
}

TEST(Age, CountsWholeYearsLived)
{
    EXPECT_EQ(ageInYears(day(1950, 6, 15), day(2026, 6, 14)), 75);
    EXPECT_EQ(ageInYears(day(1950, 6, 15), day(2026, 6, 15)), 76);
    EXPECT_EQ(ageInYears(day(2026, 3, 9), day(2026, 3, 9)), 0);
    EXPECT_FALSE(ageInYears(day(2026, 3, 10), day(2026, 3, 9)));
}

TEST(Age, SomeoneBornOnALeapDayTurnsOlderOnTheFirstOfMarchInOtherYears)
{
    EXPECT_EQ(ageInYears(day(1960, 2, 29), day(2025, 2, 28)), 64);
    EXPECT_EQ(ageInYears(day(1960, 2, 29), day(2025, 3, 1)), 65);
    EXPECT_EQ(ageInYears(day(1960, 2, 29), day(2024, 2, 28)), 63);
    EXPECT_EQ(ageInYears(day(1960, 2, 29), day(2024, 2, 29)), 64);
}

TEST(WeekdaySet, HoldsWhichDaysOfTheWeekAreDone)
{
    const WeekdaySet working = WeekdaySet::mondayToFriday();
    EXPECT_EQ(working.size(), 5);
    EXPECT_TRUE(working.contains(std::chrono::Monday));
    EXPECT_TRUE(working.contains(std::chrono::Friday));
    EXPECT_FALSE(working.contains(std::chrono::Saturday));
    EXPECT_FALSE(working.contains(std::chrono::Sunday));
    EXPECT_EQ(WeekdaySet::everyDay().size(), 7);
    EXPECT_EQ(WeekdaySet().size(), 0);

    const WeekdaySet changed = working.with(std::chrono::Sunday).without(std::chrono::Monday);
    EXPECT_EQ(changed.size(), 5);
    EXPECT_TRUE(changed.contains(std::chrono::Sunday));
    EXPECT_FALSE(changed.contains(std::chrono::Monday));
}

TEST(WeekdaySet, ComesBackFromItsBitsAndDropsOthers)
{
    for (unsigned bits = 0; bits < 128; ++bits) {
        EXPECT_EQ(WeekdaySet::fromBits(bits).bits(), bits);
    }
    EXPECT_EQ(WeekdaySet::fromBits(~0U), WeekdaySet::everyDay());
    EXPECT_EQ(WeekdaySet::fromBits(1).size(), 1);
    EXPECT_TRUE(WeekdaySet::fromBits(1).contains(std::chrono::Monday));
    EXPECT_TRUE(WeekdaySet::fromBits(64).contains(std::chrono::Sunday));
}
