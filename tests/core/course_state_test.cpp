// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/fixed_clock.h"

#include "core/course_state.h"

#include <gtest/gtest.h>

namespace quadrille
{
namespace
{

using tests::day;

Course aCourse()
{
    Course course;
    course.startDate = day(2026, 3, 2);
    course.endDate = day(2026, 4, 30);
    return course;
}

TEST(CourseState, WaitsRunsAndEnds)
{
    const Course course = aCourse();
    EXPECT_EQ(courseStateOn(course, {}, day(2026, 3, 1)), CourseState::waiting);
    EXPECT_EQ(courseStateOn(course, {}, day(2026, 3, 2)), CourseState::running);
    EXPECT_EQ(courseStateOn(course, {}, day(2026, 4, 30)), CourseState::running);
    EXPECT_EQ(courseStateOn(course, {}, day(2026, 5, 1)), CourseState::ended);
}

TEST(CourseState, APauseHasItsFirstAndItsLastDayInIt)
{
    Pause pause;
    pause.fromDate = day(2026, 3, 10);
    pause.toDate = day(2026, 3, 12);
    const auto on = [&](unsigned d) { return courseStateOn(aCourse(), {pause}, day(2026, 3, d)); };
    EXPECT_EQ(on(9), CourseState::running);
    EXPECT_EQ(on(10), CourseState::paused);
    EXPECT_EQ(on(12), CourseState::paused);
    EXPECT_EQ(on(13), CourseState::running);
}

TEST(CourseState, APauseUntilFurtherNoticeLastsUntilTheCourseEnds)
{
    Pause pause;
    pause.fromDate = day(2026, 3, 10);
    EXPECT_EQ(courseStateOn(aCourse(), {pause}, day(2026, 4, 30)), CourseState::paused);
    EXPECT_EQ(courseStateOn(aCourse(), {pause}, day(2026, 5, 1)), CourseState::ended);
    pause.withdrawn = true;
    EXPECT_EQ(courseStateOn(aCourse(), {pause}, day(2026, 4, 30)), CourseState::running);
}

} // namespace
} // namespace quadrille
