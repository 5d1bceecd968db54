// SPDX-License-Identifier: GPL-3.0-or-later
// The days of a course as the rules of the trade tell them; dates counted on a calendar.
#include "app/grid/day_marks.h"
#include "app/grid/spoken_day.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace std::chrono_literals;

namespace
{

const QuantityText english{QLocale(QLocale::English, QLocale::UnitedKingdom)};

constexpr Date day(int year, unsigned month, unsigned date)
{
    return Date(std::chrono::year(year) / std::chrono::month(month) / std::chrono::day(date));
}

/// Monday 9 February 2026.
constexpr Date start = day(2026, 2, 9);

Course course()
{
    Course made;
    made.startDate = start;
    return made;
}

Block block(int weeks, const Schedule& schedule, int sessionsPerDay = 1)
{
    Block made;
    made.weeks = weeks;
    made.schedule = schedule;
    made.sessionsPerDay = sessionsPerDay;
    return made;
}

Plan plan(int number, Date from, std::vector<Block> blocks)
{
    Plan made;
    made.number = number;
    made.fromDate = from;
    made.blocks = std::move(blocks);
    return made;
}

std::vector<DayState> statesOf(const WeekMarks& week)
{
    std::vector<DayState> states;
    for (const DayMark& mark : week) {
        states.push_back(mark.state);
    }
    return states;
}

constexpr DayState dot = DayState::notPrescribed;
constexpr DayState open = DayState::toCome;
constexpr DayState unknown = DayState::noDiaryYet;
constexpr DayState blank = DayState::blank;
using States = std::vector<DayState>;

} // namespace

TEST(DayMarks, PastDaysWaitForTheirDiaryAndLaterOnesAreToCome)
{
    const std::vector<Plan> plans{plan(1, start, {block(4, WeekdaySet::mondayToFriday())})};
    // Wednesday of week 2.
    const CourseGrid grid = courseGridOf(course(), plans, day(2026, 2, 18), english);
    ASSERT_EQ(grid.weeks.size(), 4U);
    EXPECT_EQ(statesOf(grid.weeks[0]),
              (States{unknown, unknown, unknown, unknown, unknown, dot, dot}));
    EXPECT_EQ(statesOf(grid.weeks[1]), (States{unknown, unknown, open, open, open, dot, dot}));
    EXPECT_EQ(statesOf(grid.weeks[3]), (States{open, open, open, open, open, dot, dot}));
    EXPECT_EQ(grid.currentWeek, CourseWeek{2});
    EXPECT_EQ(grid.todayRow, 2);
}

TEST(DayMarks, RowsBeginWithTheWeekdayOfTheStart)
{
    Course thursday = course();
    thursday.startDate = day(2026, 2, 12);
    const std::vector<Plan> plans{
        plan(1, thursday.startDate, {block(1, WeekdaySet::mondayToFriday())})};
    const CourseGrid grid = courseGridOf(thursday, plans, thursday.startDate, english);
    EXPECT_EQ(grid.weekdayNames[0], QStringLiteral("Thu"));
    EXPECT_EQ(grid.weekdayNames[6], QStringLiteral("Wed"));
    EXPECT_EQ(statesOf(grid.weeks[0]), (States{open, open, dot, dot, open, open, open}));
}

TEST(DayMarks, AWeekWithANumberOfDaysShowsSevenOutlines)
{
    const std::vector<Plan> plans{plan(1, start, {block(1, DaysPerWeek{3})})};
    const CourseGrid grid = courseGridOf(course(), plans, start, english);
    EXPECT_EQ(statesOf(grid.weeks[0]), States(7, open));
}

TEST(DayMarks, OldDaysKeepThePlanTheyWereLivedUnder)
{
    const Date change = day(2026, 2, 25); // Wednesday of week 3
    const std::vector<Plan> plans{
        plan(1, start, {block(4, WeekdaySet::mondayToFriday())}),
        plan(2, change,
             {block(2, WeekdaySet::mondayToFriday()), block(3, WeekdaySet::everyDay(), 2)})};
    const CourseGrid grid = courseGridOf(course(), plans, change, english);
    ASSERT_EQ(grid.weeks.size(), 5U);
    EXPECT_EQ(grid.weeks[2][1].sessionsPrescribed, 1) << "Tuesday belongs to the first plan";
    EXPECT_EQ(grid.weeks[2][2].sessionsPrescribed, 2) << "Wednesday to the second";
    EXPECT_EQ(statesOf(grid.weeks[2]), (States{unknown, unknown, open, open, open, open, open}));
}

TEST(DayMarks, HeadsNameTheBlockInForceAtTheWeeksEnd)
{
    const std::vector<Plan> plans{
        plan(1, start, {block(2, WeekdaySet::mondayToFriday()), block(3, WeekdaySet::everyDay())})};
    const CourseGrid grid = courseGridOf(course(), plans, start, english);
    ASSERT_EQ(grid.blocks.size(), 2U);
    EXPECT_EQ(grid.blocks[0],
              (BlockSpan{{1}, 2, 0, QStringLiteral("Block 1"), QStringLiteral("1")}));
    EXPECT_EQ(grid.blocks[1],
              (BlockSpan{{3}, 3, 1, QStringLiteral("Block 2"), QStringLiteral("2")}));
}

TEST(DayMarks, AShorterPlanTakesTheWeeksAwayThatItDoesNotReach)
{
    const std::vector<Plan> plans{
        plan(1, start, {block(12, WeekdaySet::mondayToFriday())}),
        plan(2, start + std::chrono::days(7), {block(6, WeekdaySet::mondayToFriday())})};
    EXPECT_EQ(courseGridOf(course(), plans, start, english).weeks.size(), 6U);
}

TEST(DayMarks, ARunningCourseShowsItsCurrentWeekEvenAfterThePlan)
{
    const std::vector<Plan> plans{plan(1, start, {block(4, WeekdaySet::mondayToFriday())})};
    const CourseGrid grid =
        courseGridOf(course(), plans, start + std::chrono::days(7 * 6), english);
    ASSERT_EQ(grid.weeks.size(), 7U);
    EXPECT_EQ(statesOf(grid.weeks[6]), States(7, dot));
}

TEST(DayMarks, AfterTheEndOfTheCourseNothingIsPrescribed)
{
    Course ended = course();
    ended.endDate = day(2026, 2, 18);
    const std::vector<Plan> plans{plan(1, start, {block(4, WeekdaySet::mondayToFriday())})};
    const CourseGrid grid = courseGridOf(ended, plans, day(2026, 6, 1), english);
    EXPECT_EQ(statesOf(grid.weeks[1]), (States{unknown, unknown, unknown, dot, dot, dot, dot}));
    EXPECT_EQ(grid.weeks.size(), 4U);
}

TEST(Miniature, TheCurrentWeekIsRightmostAndWeeksBeforeTheStartAreBlank)
{
    const std::vector<Plan> plans{plan(1, start, {block(8, WeekdaySet::mondayToFriday())})};
    const CourseGrid grid = miniatureOf(course(), plans, day(2026, 2, 16), english);
    ASSERT_EQ(grid.weeks.size(), 4U);
    EXPECT_EQ(grid.firstWeek, CourseWeek{-1});
    EXPECT_EQ(statesOf(grid.weeks[1]), States(7, blank));
    EXPECT_EQ(grid.weeks[2][0].state, unknown);
    EXPECT_EQ(grid.weeks[3][0].state, open);
    EXPECT_EQ(columnOf(grid, {2}), 3);
}

TEST(Miniature, ACourseToBeginShowsItsFirstWeeks)
{
    const std::vector<Plan> plans{plan(1, start, {block(8, WeekdaySet::mondayToFriday())})};
    const CourseGrid grid = miniatureOf(course(), plans, day(2026, 2, 1), english);
    EXPECT_EQ(grid.firstWeek, CourseWeek{1});
    EXPECT_EQ(grid.weeks[0][0].state, open);
    EXPECT_FALSE(grid.currentWeek);
}

TEST(Window, ShowsTheWeeksAskedForAndNoneBeyondTheEnd)
{
    const std::vector<Plan> plans{plan(1, start, {block(20, WeekdaySet::mondayToFriday())})};
    const CourseGrid whole = courseGridOf(course(), plans, start, english);
    const CourseGrid window = windowOf(whole, {5}, 16);
    EXPECT_EQ(window.firstWeek, CourseWeek{5});
    EXPECT_EQ(window.weeks.size(), 16U);
    EXPECT_EQ(windowOf(whole, {15}, 16).weeks.size(), 6U);
    EXPECT_EQ(dayAt(window, 0, 1), start + std::chrono::days(4 * 7 + 1));
}

TEST(SpokenDay, NamesDayWeekAndStateAndWhatWasFound)
{
    const std::vector<Plan> plans{plan(1, start, {block(4, WeekdaySet::mondayToFriday(), 2)})};
    CourseGrid grid = courseGridOf(course(), plans, day(2026, 3, 12), english);
    DayMark& mark = grid.weeks[3][1];
    mark.state = DayState::done;
    mark.sessionsDone = 2;
    mark.skinMark = true;
    mark.note = QStringLiteral("red under lower pad");
    EXPECT_EQ(spokenDay(grid, {3, 1}, english),
              QStringLiteral("Tuesday 3 March 2026, week 4: 2 of 2 sessions done, skin mark, "
                             "note: red under lower pad"));
    EXPECT_EQ(spokenDay(grid, {0, 0}, english),
              QStringLiteral("Monday 9 February 2026, week 1: 2 sessions, no diary yet"));
    EXPECT_EQ(spokenDay(grid, {0, 6}, english),
              QStringLiteral("Sunday 15 February 2026, week 1: nothing prescribed"));
}
