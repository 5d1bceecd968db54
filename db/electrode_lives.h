// SPDX-License-Identifier: GPL-3.0-or-later
// How long pads last, as the practice reckons: one preference for each type and measure.
#pragma once

#include "db/store.h"

#include "core/electrode_set.h"

namespace quadrille::db
{

inline constexpr int mostLifeUses = 10000;
inline constexpr int mostLifeMonths = 120;

/// What the practice has said; the usual lives where it has not. Error badFormat where it has said
/// neither nothing nor a whole number from 1 to the most.
ElectrodeLives electrodeLives(Reading& reading);
/// Saves what differs from `read`. Error changedElsewhere when somebody else has changed
/// it since. What says no number is set again whatever was read.
void saveElectrodeLives(Writing& writing, const ElectrodeLives& read, const ElectrodeLives& lives);

} // namespace quadrille::db
