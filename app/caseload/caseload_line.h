// SPDX-License-Identifier: GPL-3.0-or-later
// What orders, counts and finds one patient of the caseload: cheap enough for thousands.
#pragma once

#include "app/caseload/attention.h"

#include "db/caseload_query.h"

#include <QString>

#include <optional>
#include <vector>

namespace quadrille::app
{

struct CaseloadLine {
    PatientId patient{0};
    std::optional<CourseId> course = std::nullopt;
    QString name;
    QString searchable;                     ///< folded, see patient_search.h
    std::vector<Attention> reasons;         ///< the weightiest first
    std::optional<int> week = std::nullopt; ///< course week of today, of a running course
    bool hasEnded = false;
    bool endsWithinAWeek = false; ///< the plan's last day is at most 7 days away

    bool needsAttention() const { return !reasons.empty(); }
    bool hasReason(AttentionReason reason) const;
};

CaseloadLine lineOf(const db::CaseloadFacts& facts, Date today);

} // namespace quadrille::app
