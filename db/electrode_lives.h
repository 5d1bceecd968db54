// SPDX-License-Identifier: GPL-3.0-or-later
// How long pads last, as the practice reckons: one preference for each type and measure.
#pragma once

#include "db/store.h"

#include "core/electrode_set.h"

namespace quadrille::db
{

/// What the practice has said; the usual lives where it has not.
ElectrodeLives electrodeLives(Reading& reading);
/// Saves what differs from `read`. Error changedElsewhere when somebody else has changed it since.
void saveElectrodeLives(Writing& writing, const ElectrodeLives& read, const ElectrodeLives& lives);

} // namespace quadrille::db
