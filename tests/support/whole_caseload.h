// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/caseload_query.h"

#include <vector>

namespace quadrille::tests
{

/// The whole row of every patient that is not archived, by folded name.
inline std::vector<db::CaseloadRow> wholeCaseload(db::Reading& reading)
{
    const Date longAgo = Date(std::chrono::year(1900) / 1 / 1);
    std::vector<PatientId> all;
    for (const db::CaseloadFacts& facts : db::currentCaseload(reading, longAgo)) {
        all.push_back(facts.patient);
    }
    return db::caseloadRows(reading, all);
}

} // namespace quadrille::tests
