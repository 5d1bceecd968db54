// SPDX-License-Identifier: GPL-3.0-or-later
// Who changed what, when, from what and to what. Rows are added and never touched again.
#pragma once

#include "db/rows.h"
#include "db/store.h"

#include "core/ids.h"

#include <cstdint>
#include <optional>
#include <string_view>

namespace quadrille::db
{

/// The record that a change concerns.
struct Record {
    std::string_view kind; ///< the name of its table
    std::int64_t id = 0;
    std::optional<PatientId> patient = std::nullopt; ///< whose history it belongs to
};

/// One row.
void recordCreated(Writing& writing, const Record& record);
/// One row for each column whose value differs, also where one side has no such column.
void recordChanged(Writing& writing, const Record& record, const Columns& before,
                   const Columns& after);
/// One row. What the record held has to be recorded before (recordChanged to nothing), unless it
/// lives on elsewhere.
void recordRemoved(Writing& writing, const Record& record);

} // namespace quadrille::db
