// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/course.h"

#include <gtest/gtest.h>

using namespace quadrille;

TEST(Course, RunsUntilItsLastDayHasPassed)
{
    const Date start = *dateFromIso("2026-03-09");
    Course course;
    course.startDate = start;
    EXPECT_TRUE(isRunning(course, start));
    EXPECT_TRUE(isRunning(course, start + std::chrono::days(1000)));
    course.endDate = start + std::chrono::days(41);
    EXPECT_TRUE(isRunning(course, *course.endDate));
    EXPECT_FALSE(isRunning(course, *course.endDate + std::chrono::days(1)));
}
