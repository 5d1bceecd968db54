// SPDX-License-Identifier: GPL-3.0-or-later
// Days as files write them. ISO 8601-1:2019 gives 2026-03-09 and 20260309 as complete calendar
// dates; that a number above 12 can only be a day is arithmetic; the rest is common practice.
#include "tests/support/fixed_clock.h"

#include "core/diary_dates.h"

#include <gtest/gtest.h>

using namespace quadrille;
using tests::day;

namespace
{

WrittenDate written(std::string_view text, std::optional<DateOrder> order = std::nullopt)
{
    return writtenDate(text, order);
}

constexpr auto dayFirst = DateOrder::dayMonthYear;
constexpr auto monthFirst = DateOrder::monthDayYear;

} // namespace

TEST(DiaryDates, ReadsTheFormsOfIso8601)
{
    const WrittenDate ninth = day(2026, 3, 9);
    EXPECT_EQ(written("2026-03-09"), ninth);
    EXPECT_EQ(written("20260309"), ninth);
    EXPECT_EQ(written(" 2026-03-09 "), ninth);
    EXPECT_EQ(written("2026-03-09T18:30:00"), ninth) << "the time of day is left aside";
    EXPECT_EQ(written("2026-03-09 18:30"), ninth);
    EXPECT_EQ(written("2026-02-29"), WrittenDate(DateProblem::noSuchDay)) << "no leap year";
    EXPECT_EQ(written("2028-02-29"), WrittenDate(day(2028, 2, 29)));
}

TEST(DiaryDates, RefusesAMomentWhoseDayDependsOnThePlace)
{
    EXPECT_EQ(written("2026-03-09T23:30:00Z"), WrittenDate(DateProblem::withZone));
    EXPECT_EQ(written("2026-03-09T23:30:00+02:00"), WrittenDate(DateProblem::withZone));
}

TEST(DiaryDates, ReadsNamesOfMonths)
{
    for (const char* text : {"9 Mar 2026", "9 march 2026", "Mar 9, 2026", "9-Mar-2026"}) {
        EXPECT_EQ(written(text), WrittenDate(day(2026, 3, 9))) << text;
    }
    EXPECT_EQ(written("9 Mer 2026"), WrittenDate(DateProblem::unreadable));
}

TEST(DiaryDates, NeverGuessesTheOrder)
{
    EXPECT_EQ(written("3/4/2026"), WrittenDate(DateProblem::orderNotKnown));
    EXPECT_EQ(written("03.04.2026"), WrittenDate(DateProblem::orderNotKnown));
    EXPECT_EQ(written("3/4/2026", dayFirst), WrittenDate(day(2026, 4, 3)));
    EXPECT_EQ(written("3/4/2026", monthFirst), WrittenDate(day(2026, 3, 4)));
    EXPECT_EQ(written("5/5/2026"), WrittenDate(day(2026, 5, 5))) << "one day in either order";
    EXPECT_EQ(written("13/4/2026", monthFirst), WrittenDate(DateProblem::noSuchDay));
}

TEST(DiaryDates, RefusesAYearOfTwoDigits)
{
    for (const char* text : {"9/3/26", "09.03.26", "26-03-09", "9 Mar 26"}) {
        EXPECT_EQ(written(text, dayFirst), WrittenDate(DateProblem::twoDigitYear)) << text;
    }
}

TEST(DiaryDates, RefusesWhatIsNoDay)
{
    EXPECT_EQ(written(""), WrittenDate(DateProblem::empty));
    for (const char* text :
         {"yesterday", "9/3", "9/3-2026", "2026-3-9-1", "=TODAY()", "9/3/2026x"}) {
        EXPECT_EQ(written(text, dayFirst), WrittenDate(DateProblem::unreadable)) << text;
    }
}

TEST(DateEvidence, IsShownByADayAboveTwelve)
{
    DateEvidence open;
    open.note("3/4/2026");
    EXPECT_TRUE(open.isOpen());
    open.note("2026-03-09");
    open.note("5/5/2026");
    EXPECT_TRUE(open.isOpen());
    open.note("13/4/2026");
    EXPECT_FALSE(open.isOpen());
    EXPECT_EQ(open.order(), dayFirst);
    open.note("4/13/2026");
    EXPECT_TRUE(open.isOpen());
    EXPECT_TRUE(open.contradictsItself());
    DateEvidence american;
    american.note("4/13/2026");
    EXPECT_EQ(american.order(), monthFirst);
}

TEST(DateEvidence, IsNotNeededForDatesThatSayItThemselves)
{
    DateEvidence iso;
    iso.note("2026-03-04");
    iso.note("20260304");
    iso.note("4 Mar 2026");
    EXPECT_FALSE(iso.isOpen());
    EXPECT_EQ(iso.order(), std::nullopt);
}
