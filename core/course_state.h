// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/course.h"

#include <vector>

namespace quadrille
{

/// Days on which a course stands still; they are not prescribed.
struct Pause {
    std::optional<PauseId> id = std::nullopt;
    std::optional<CourseId> course = std::nullopt;
    Date fromDate;
    std::optional<Date> toDate = std::nullopt; ///< the last day of it; none: until further notice
    std::string reason;
    bool withdrawn = false; ///< entered by mistake
    Version version = 1;
    friend bool operator==(const Pause&, const Pause&) = default;
};

bool contains(const Pause& pause, Date day);

enum class CourseState {
    waiting, ///< starts later
    running,
    paused,
    ended,
};

/// How a course stands on a day. `pauses` are the course's own; withdrawn ones do not count.
CourseState courseStateOn(const Course& course, const std::vector<Pause>& pauses, Date day);

} // namespace quadrille
