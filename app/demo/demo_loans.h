// SPDX-License-Identifier: GPL-3.0-or-later
// The demo's single units and who has or had them. All of it is invented.
#pragma once

#include "app/demo/demo_history.h"

#include "core/calendar.h"

#include <vector>

namespace quadrille::app
{

/// Adds the units to the inventory, with safety checks around `today`; fills in `keys.units`.
void addDemoUnits(db::Writing& writing, DemoKeys& keys, Date today);

/// The loans as acts: a unit goes out on the first day of a course, and comes back as it ended.
/// None on `today` or later. `keys` outlives them.
std::vector<DemoEvent> demoLoans(const std::vector<DemoPatient>& patients, DemoKeys& keys,
                                 Date today);

} // namespace quadrille::app
