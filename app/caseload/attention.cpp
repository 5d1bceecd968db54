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

std::optional<db::CaseloadCourse> courseFactsOf(const db::CaseloadRow& row)
{
    if (!row.course) {
        return std::nullopt;
    }
    db::CaseloadCourse course;
    if (row.course->id) {
        course.id = *row.course->id;
    }
    course.startDate = row.course->startDate;
    course.endDate = row.course->endDate;
    if (const auto newest = newestPlan(row.plans)) {
        course.plannedWeeks = totalWeeks(row.plans[*newest].blocks);
    }
    course.hasDraft = row.hasDraft;
    course.screeningSigned = row.screeningSigned;
    course.screeningValidThrough = row.screeningValidThrough;
    return course;
}

bool isRunning(const db::CaseloadCourse& course, Date today)
{
    return !course.endDate || *course.endDate >= today;
}

std::optional<Date> lastPlannedDay(const db::CaseloadCourse& course)
{
    if (!course.plannedWeeks) {
        return std::nullopt;
    }
    return firstDayOf(course.startDate, CourseWeek{*course.plannedWeeks + 1}) -
           std::chrono::days(1);
}

std::vector<Attention> attentionOf(const std::optional<db::CaseloadCourse>& course, Date today)
{
    if (!course || !isRunning(*course, today)) {
        return {};
    }
    std::vector<Attention> reasons;
    if (!course->screeningSigned) {
        reasons.push_back({AttentionReason::screeningNotSigned});
    } else if (course->screeningValidThrough && *course->screeningValidThrough < today) {
        reasons.push_back({AttentionReason::screeningTooOld, course->screeningValidThrough});
    }
    if (!course->plannedWeeks) {
        reasons.push_back({AttentionReason::noPlan});
    }
    const auto last = lastPlannedDay(*course);
    if (last && *last < today) {
        reasons.push_back({AttentionReason::planOver, last});
    }
    if (course->hasDraft) {
        reasons.push_back({AttentionReason::draftNotIssued});
    }
    if (last && *last >= today && *last - today < week) {
        reasons.push_back({AttentionReason::lastWeek, last});
    }
    return reasons;
}

} // namespace quadrille::app
