// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/caseload_projection.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>

namespace quadrille
{

CaseloadProjection projectCaseload(const std::vector<CourseToProject>& courses, unsigned workers,
                                   const std::stop_token& stop,
                                   const std::function<void(std::size_t, std::size_t)>& progress,
                                   const FatigueOptions& options)
{
    CaseloadProjection projection;
    projection.courses.resize(courses.size());
    std::atomic<std::size_t> next{0};
    std::mutex reporting;
    std::exception_ptr failure;
    std::atomic<bool> hasFailed{false};
    const auto project = [&] {
        FatigueMemory memory;
        while (!stop.stop_requested() && !hasFailed) {
            const std::size_t index = next.fetch_add(1);
            if (index >= courses.size()) {
                return;
            }
            const CourseToProject& given = courses[index];
            projection.courses[index] = projectCourse(given.course, given.plans, memory, options);
            const std::scoped_lock lock(reporting);
            ++projection.done;
            if (progress) {
                progress(projection.done, courses.size());
            }
        }
    };
    // What is thrown in a thread is thrown again where the caller can catch it.
    const auto work = [&] {
        try {
            project();
        } catch (...) {
            const std::scoped_lock lock(reporting);
            failure = std::current_exception();
            hasFailed = true;
        }
    };
    const unsigned cores = std::max(1U, std::thread::hardware_concurrency());
    const auto most = static_cast<unsigned>(std::min<std::size_t>(courses.size(), 256));
    const unsigned count = std::min(workers == 0 ? cores : workers, std::max(1U, most));
    {
        std::vector<std::jthread> threads;
        for (unsigned i = 1; i < count; ++i) {
            threads.emplace_back(work);
        }
        work();
    }
    if (failure) {
        std::rethrow_exception(failure);
    }
    projection.wasStopped = projection.done < courses.size();
    return projection;
}

} // namespace quadrille
