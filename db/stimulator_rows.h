// SPDX-License-Identifier: GPL-3.0-or-later
// The rows of a stimulator: the unit itself, its waveforms, ranges, asking order and own words. The
// practice's own units and the copies that plans rest on have the same tables.
#pragma once

#include "db/rows.h"
#include "db/sql.h"

#include "core/stimulator.h"

#include <cstdint>
#include <string_view>
#include <vector>

namespace quadrille::db
{

/// The units for which `condition` holds (on columns of `stimulator`), each with its key in the
/// store. A copy has the id of the unit it was taken from.
struct StoredStimulator {
    std::int64_t key = 0;
    Stimulator stimulator;
};
std::vector<StoredStimulator> stimulatorsWhere(const Connection& connection,
                                               std::string_view condition,
                                               const std::vector<Value>& values = {});

/// Adds a unit of the practice.
std::int64_t addStimulatorRows(const Connection& connection, const Stimulator& stimulator);
void changeStimulatorRows(const Connection& connection, std::int64_t key,
                          const Stimulator& stimulator);
/// The key of a sealed copy of the unit as it is; the last copy serves while the unit is unchanged.
std::int64_t sealedCopyOf(const Connection& connection, const Stimulator& stimulator);

/// The whole unit as one flat list of columns, "ranges.on_time.most", for the change record.
Columns columnsOf(const Stimulator& stimulator);

} // namespace quadrille::db
