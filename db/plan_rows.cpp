// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/plan_rows.h"

#include "db/codec.h"

namespace quadrille::db
{

Plan takePlan(Statement& row)
{
    Plan plan;
    plan.id = takeId<Plan>(row);
    plan.course = takeId<Course>(row);
    plan.number = takeInt(row);
    plan.issuedOn = takeDate(row);
    plan.issuedBy = takeId<Practitioner>(row);
    plan.issuedByName = row.takeText();
    plan.fromDate = takeDate(row);
    plan.reason = row.takeText();
    plan.limitsVersion = takeInt(row);
    plan.atlasVersion = takeInt(row);
    return plan;
}

} // namespace quadrille::db
