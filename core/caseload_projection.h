// SPDX-License-Identifier: GPL-3.0-or-later
// The projection of many courses at once, on all cores.
#pragma once

#include "core/course_projection.h"

#include <cstddef>
#include <functional>
#include <stop_token>
#include <vector>

namespace quadrille
{

/// One course with its plans.
struct CourseToProject {
    Course course;
    std::vector<Plan> plans;
};

struct CaseloadProjection {
    /// In the order of the courses; empty for those that were not reached before it was stopped.
    std::vector<std::vector<ProjectedWeek>> courses;
    std::size_t done = 0;
    bool wasStopped = false;
};

/// Projects each course. `workers` ≥ 1 threads share the work (0: as many as there are cores);
/// `progress(done, all)` is called after each course, from one thread at a time. Ends soon after
/// `stop` is asked for, with what is done by then; what `progress` throws comes out here.
CaseloadProjection projectCaseload(const std::vector<CourseToProject>& courses, unsigned workers,
                                   const std::stop_token& stop,
                                   const std::function<void(std::size_t, std::size_t)>& progress,
                                   const FatigueOptions& options = {});

} // namespace quadrille
