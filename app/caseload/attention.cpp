// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/attention.h"

namespace quadrille::app
{

namespace
{

constexpr std::chrono::days week{7};

} // namespace

std::optional<std::size_t> newestPlan(const std::vector<Plan>& plans)
{
    std::optional<std::size_t> newest;
    for (std::size_t i = 0; i < plans.size(); ++i) {
        if (!newest || plans[i].number > plans[*newest].number) {
            newest = i;
        }
    }
    return newest;
}

std::optional<Date> lastPlannedDay(const Course& course, const std::vector<Plan>& plans)
{
    const auto newest = newestPlan(plans);
    if (!newest) {
        return std::nullopt;
    }
    const CourseWeek after{totalWeeks(plans[*newest].blocks) + 1};
    return firstDayOf(course.startDate, after) - std::chrono::days(1);
}

std::vector<Attention> attentionOf(const db::CaseloadRow& row, Date today)
{
    if (!row.course || !isRunning(*row.course, today)) {
        return {};
    }
    std::vector<Attention> reasons;
    if (!row.screeningSigned) {
        reasons.push_back({AttentionReason::screeningNotSigned});
    } else if (row.screeningValidThrough && *row.screeningValidThrough < today) {
        reasons.push_back({AttentionReason::screeningTooOld, row.screeningValidThrough});
    }
    if (row.plans.empty()) {
        reasons.push_back({AttentionReason::noPlan});
    }
    if (row.hasDraft) {
        reasons.push_back({AttentionReason::draftNotIssued});
    }
    if (const auto last = lastPlannedDay(*row.course, row.plans)) {
        if (*last < today) {
            reasons.push_back({AttentionReason::planOver, last});
        } else if (*last - today < week) {
            reasons.push_back({AttentionReason::lastWeek, last});
        }
    }
    return reasons;
}

} // namespace quadrille::app
