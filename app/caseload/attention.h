// SPDX-License-Identifier: GPL-3.0-or-later
// Why a course needs a look, in the order of weight.
#pragma once

#include "db/caseload_query.h"

#include "core/calendar.h"

#include <optional>
#include <vector>

namespace quadrille::app
{

enum class AttentionReason {
    screeningNotSigned, ///< none, or the latest waits for a signature: nothing is issued or printed
    screeningTooOld,    ///< past its term
    noPlan,             ///< the course runs and nothing is in force
    planOver,           ///< the plan's weeks are over, the course still runs
    draftNotIssued,     ///< a draft waits
    lastWeek,           ///< the last week of the plan is running
};

struct Attention {
    AttentionReason reason = AttentionReason::noPlan;
    std::optional<Date> day = std::nullopt; ///< last day of the plan, for planOver and lastWeek;
                                            ///< the last on which the screening held
    friend bool operator==(const Attention&, const Attention&) = default;
};

bool isRunning(const db::CaseloadCourse& course, Date today);
/// All reasons of one course, the weightiest first; none for an ended one or without a course.
std::vector<Attention> attentionOf(const std::optional<db::CaseloadCourse>& course, Date today);

/// The last day for which the plan issued last prescribes weeks; nothing without a plan.
std::optional<Date> lastPlannedDay(const db::CaseloadCourse& course);
/// The plan issued last; nothing without one.
std::optional<std::size_t> newestPlan(const std::vector<Plan>& plans);
/// What of a whole row decides on attention.
std::optional<db::CaseloadCourse> courseFactsOf(const db::CaseloadRow& row);

} // namespace quadrille::app
