// SPDX-License-Identifier: GPL-3.0-or-later
// Looks through a whole store for what should never be.
#pragma once

#include "db/store.h"

#include <string>
#include <vector>

namespace quadrille::db
{

enum class Fault {
    damage,       ///< pages, types, constraints or indexes
    reference,    ///< a row points to one that is not there
    schema,       ///< a table, index or guard is missing or changed
    changedPlan,  ///< an issued plan is not what was issued
    brokenChain,  ///< a row of the change record was altered, added or taken away
    changedValue, ///< a value in the change record is not the one that was recorded
    orphan,       ///< a row that belongs to nothing
    date,         ///< dates that contradict each other
    value,        ///< a value that its parts do not make
};

struct Complaint {
    Fault fault = Fault::damage;
    std::string place;  ///< table, or table and key
    std::string detail; ///< what is wrong there, as far as facts can say it
    friend bool operator==(const Complaint&, const Complaint&) = default;
};

/// What is wrong, in the order of Fault; empty when nothing is.
std::vector<Complaint> verify(Reading& reading);

/// The end of the change record: how many rows, and the chain after them. Written down, it shows
/// later that nothing before it was changed.
struct ChangeRecordEnd {
    std::int64_t rows = 0;
    std::string chain;
};
ChangeRecordEnd changeRecordEnd(Reading& reading);

} // namespace quadrille::db
