// SPDX-License-Identifier: GPL-3.0-or-later
// Records that two windows may change at once: a save goes over the version that was read, or not
// at all.
#pragma once

#include "db/change_record.h"
#include "db/rows.h"
#include "db/store.h"

#include "core/ids.h"

#include <cstdint>

namespace quadrille::db
{

/// Adds a row to the table `record.kind` and its row in the change record; gives its key.
std::int64_t addRecord(Writing& writing, Record record, const Columns& columns);

/// Saves `after` over the row, raises its version and records what changed. Nothing happens when
/// nothing differs. Failure changedElsewhere, with who saved it last in `detail`, when the row no
/// longer has the version that was read; notFound when it is gone.
void saveOver(Writing& writing, const Record& record, Version read, const Columns& before,
              const Columns& after);

/// The same for a record that has parts in other tables: raises the version, or fails. The caller
/// writes the parts and records the change.
void raiseVersion(Writing& writing, const Record& record, Version read);

} // namespace quadrille::db
