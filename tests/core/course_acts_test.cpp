// SPDX-License-Identifier: GPL-3.0-or-later
// As the words of the trade have it: days of a pause are not prescribed, and only a new plan makes
// up for it.
#include "tests/core/examples.h"
#include "tests/support/fixed_clock.h"

#include "core/course_acts.h"
#include "core/prescribed_days.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::test;
using quadrille::tests::day;

namespace
{

Pause pauseOf(std::int64_t key, Date from, std::optional<Date> to)
{
    Pause pause;
    pause.id = PauseId(key);
    pause.course = CourseId(1);
    pause.fromDate = from;
    pause.toDate = to;
    pause.reason = "holiday";
    return pause;
}

Course endedCourse()
{
    Course course;
    course.id = CourseId(1);
    course.startDate = day(2026, 2, 9);
    course.endDate = day(2026, 3, 8);
    course.endReason = "goal reached";
    return course;
}

} // namespace

TEST(PauseInTheWay, IsOneThatSharesADay)
{
    const std::vector<Pause> pauses{pauseOf(1, day(2026, 3, 2), day(2026, 3, 8))};
    const auto asks = [&](Date from, std::optional<Date> to) {
        Pause wanted = pauseOf(0, from, to);
        wanted.id.reset();
        return pauseInTheWay(pauses, wanted).has_value();
    };
    EXPECT_TRUE(asks(day(2026, 3, 8), day(2026, 3, 9))) << "the last day is a day of it";
    EXPECT_TRUE(asks(day(2026, 2, 20), day(2026, 3, 2))) << "the first day is a day of it";
    EXPECT_TRUE(asks(day(2026, 2, 20), std::nullopt)) << "until further notice";
    EXPECT_FALSE(asks(day(2026, 3, 9), std::nullopt));
    EXPECT_FALSE(asks(day(2026, 2, 20), day(2026, 3, 1)));
}

TEST(PauseInTheWay, IsNeitherItselfNorAWithdrawnOne)
{
    Pause pause = pauseOf(1, day(2026, 3, 2), std::nullopt);
    EXPECT_FALSE(pauseInTheWay({pause}, pause).has_value());
    pause.withdrawn = true;
    EXPECT_FALSE(pauseInTheWay({pause}, pauseOf(2, day(2026, 3, 3), std::nullopt)).has_value());
}

TEST(StandingPause, IsTheOneOfTodayOrTheNextToCome)
{
    const std::vector<Pause> pauses{pauseOf(1, day(2026, 4, 1), std::nullopt),
                                    pauseOf(2, day(2026, 2, 16), day(2026, 2, 20)),
                                    pauseOf(3, day(2026, 3, 2), day(2026, 3, 8))};
    EXPECT_EQ(standingPause(pauses, day(2026, 3, 4))->id, PauseId(3));
    EXPECT_EQ(standingPause(pauses, day(2026, 3, 8))->id, PauseId(3));
    EXPECT_EQ(standingPause(pauses, day(2026, 3, 9))->id, PauseId(1));
    EXPECT_EQ(standingPause({pauses[1]}, day(2026, 3, 9)), std::nullopt);
}

TEST(GoingOn, EndsThePauseTheDayBefore)
{
    const Pause pause = pauseOf(1, day(2026, 3, 2), std::nullopt);
    EXPECT_EQ(endedBy(pause, day(2026, 3, 9)).toDate, day(2026, 3, 8));
    EXPECT_FALSE(endedBy(pause, day(2026, 3, 9)).withdrawn);
    EXPECT_TRUE(endedBy(pause, day(2026, 3, 2)).withdrawn) << "it never began";
}

TEST(Reopening, LeavesTheCourseStandingStillFromTheDayAfterItsEnd)
{
    const Reopening saves = reopened(endedCourse(), {}, "pain came back", day(2026, 3, 12));
    EXPECT_EQ(saves.course.endDate, std::nullopt);
    EXPECT_EQ(saves.course.endReason, "");
    EXPECT_TRUE(saves.changed.empty());
    ASSERT_TRUE(saves.added.has_value());
    EXPECT_EQ(saves.added->course, CourseId(1));
    EXPECT_EQ(saves.added->fromDate, day(2026, 3, 9));
    EXPECT_EQ(saves.added->toDate, std::nullopt);
    EXPECT_EQ(saves.added->reason, "pain came back");
}

TEST(Reopening, PrescribesNothingUntilTheNextPlan)
{
    Plan plan;
    plan.fromDate = day(2026, 2, 9);
    plan.blocks = {someBlock()};
    plan.blocks[0].weeks = 12;
    Course course = endedCourse();
    const Reopening saves = reopened(course, {}, "pain came back", day(2026, 3, 12));
    const auto days = prescribedDays(saves.course, {plan}, {*saves.added});
    ASSERT_FALSE(days.empty());
    for (const PrescribedDay& one : days) {
        EXPECT_EQ(one.isPaused, one.day > day(2026, 3, 8)) << isoDate(one.day);
    }
    Plan next = plan;
    next.number = 2;
    next.fromDate = day(2026, 4, 6);
    const auto withNext =
        prescribedDays(saves.course, {plan, next}, {endedBy(*saves.added, next.fromDate)});
    ASSERT_FALSE(withNext.empty());
    for (const PrescribedDay& one : withNext) {
        EXPECT_EQ(one.isPaused, one.day > day(2026, 3, 8) && one.day < next.fromDate)
            << isoDate(one.day);
    }
}

TEST(Reopening, PausesAfterTheEndMakeWayAndOneOverItLasts)
{
    const std::vector<Pause> pauses{pauseOf(1, day(2026, 3, 2), day(2026, 3, 15)),
                                    pauseOf(2, day(2026, 4, 1), std::nullopt),
                                    pauseOf(3, day(2026, 2, 16), day(2026, 2, 20))};
    const Reopening saves = reopened(endedCourse(), pauses, "pain came back", day(2026, 3, 12));
    EXPECT_FALSE(saves.added.has_value());
    ASSERT_EQ(saves.changed.size(), 2U);
    EXPECT_EQ(saves.changed[0].id, PauseId(2));
    EXPECT_TRUE(saves.changed[0].withdrawn);
    EXPECT_EQ(saves.changed[1].id, PauseId(1)) << "after those that lay in its way";
    EXPECT_EQ(saves.changed[1].toDate, std::nullopt);
}

TEST(Reopening, AnOpenPauseOverTheEndNeedsNothing)
{
    const Reopening saves = reopened(endedCourse(), {pauseOf(1, day(2026, 3, 2), std::nullopt)},
                                     "pain came back", day(2026, 3, 12));
    EXPECT_FALSE(saves.added.has_value());
    EXPECT_TRUE(saves.changed.empty());
}

TEST(Reopening, ACourseThatStillRunsOnlyLosesItsEnd)
{
    const std::vector<Pause> pauses{pauseOf(2, day(2026, 4, 1), std::nullopt)};
    const Reopening saves = reopened(endedCourse(), pauses, "goes on", day(2026, 3, 8));
    EXPECT_EQ(saves.course.endDate, std::nullopt);
    EXPECT_TRUE(saves.changed.empty());
    EXPECT_FALSE(saves.added.has_value());
}
