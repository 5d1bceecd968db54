// SPDX-License-Identifier: GPL-3.0-or-later
// What each day of a course asks for, under the plan that was in force on it.
#pragma once

#include "core/course_state.h"
#include "core/plan.h"

#include <compare>
#include <cstddef>
#include <vector>

namespace quadrille
{

/// A block of one of the plans of a course.
struct BlockInForce {
    std::size_t plan = 0;  ///< its place among the plans
    std::size_t block = 0; ///< its place in the plan
    friend auto operator<=>(const BlockInForce&, const BlockInForce&) = default;
};

/// A day on which a block is in force; its rest days and paused days too.
struct PrescribedDay {
    Date day;
    CourseWeek week;
    BlockInForce block;
    bool isPaused = false;
    bool anyDay = false; ///< one of several days of the week, the patient's choice
    int sessions = 0;    ///< asked for on this day; on any day of the week: at most so many count
    friend bool operator==(const PrescribedDay&, const PrescribedDay&) = default;
};

/// Every day of the course on which a block is in force, the earliest first. `plans` and `pauses`
/// are the course's own, in any order. See prescriptionOn() for the plan in force.
std::vector<PrescribedDay> prescribedDays(const Course& course, const std::vector<Plan>& plans,
                                          const std::vector<Pause>& pauses);

/// How many days a part of a week asks for where a block says so many days a week: its share,
/// `perWeek` × `daysOfPart` / 7, to the nearest day (seven being odd, none lies half way). A pause,
/// the end of the course or another plan makes a part of a week. Common practice, no source.
int daysOfPartWeek(DaysPerWeek perWeek, int daysOfPart);

} // namespace quadrille
