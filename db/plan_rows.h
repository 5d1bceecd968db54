// SPDX-License-Identifier: GPL-3.0-or-later
// A row of a plan, for the repository and for the caseload.
#pragma once

#include "db/sql.h"

#include "core/plan.h"

namespace quadrille::db
{

/// In the order in which takePlan reads them.
inline constexpr const char* planColumns =
    "plan.id, plan.course, plan.number, plan.issued_on, plan.issued_by, plan.issued_by_name, "
    "plan.from_date, plan.reason, plan.limits_version, plan.atlas_version";
/// The plan without its stimulator and its blocks.
Plan takePlan(Statement& row);

} // namespace quadrille::db
