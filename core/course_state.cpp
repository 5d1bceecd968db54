// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/course_state.h"

#include <algorithm>

namespace quadrille
{

bool contains(const Pause& pause, Date day)
{
    return !pause.withdrawn && day >= pause.fromDate && (!pause.toDate || day <= *pause.toDate);
}

CourseState courseStateOn(const Course& course, const std::vector<Pause>& pauses, Date day)
{
    if (!isRunning(course, day)) {
        return CourseState::ended;
    }
    if (day < course.startDate) {
        return CourseState::waiting;
    }
    const bool stands =
        std::ranges::any_of(pauses, [&](const Pause& pause) { return contains(pause, day); });
    return stands ? CourseState::paused : CourseState::running;
}

} // namespace quadrille
