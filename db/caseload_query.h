// SPDX-License-Identifier: GPL-3.0-or-later
// What the caseload shows of every patient: plain rows, few statements for all.
#pragma once

#include "db/store.h"

#include "core/course.h"
#include "core/people.h"
#include "core/plan.h"
#include "core/screening_gate.h"

#include <optional>
#include <vector>

namespace quadrille::db
{

/// A patient and the latest course: one without a last day before the others, then the one that
/// ends later, then the later start.
struct CaseloadRow {
    Patient patient;
    std::optional<Course> course = std::nullopt; ///< none entered yet
    /// Plans with their blocks and sites (muscle, side, channel); settings, pads and the copied
    /// unit are left empty.
    std::vector<Plan> plans;
    bool hasDraft = false;
    bool screeningSigned = false; ///< the latest screening of the course
    std::optional<Date> screeningValidThrough = std::nullopt; ///< of a signed one
};

/// Every patient that is not archived, by name.
std::vector<CaseloadRow> caseload(Reading& reading);

} // namespace quadrille::db
