// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of stimulators.
#pragma once

#include "db/store.h"

#include "core/stimulator.h"

#include <optional>
#include <vector>

namespace quadrille::db
{

/// All, archived ones last, by name.
std::vector<Stimulator> stimulators(Reading& reading);
std::optional<Stimulator> stimulator(Reading& reading, StimulatorId id);
/// notUnique when another unit that is not archived has the name.
StimulatorId addStimulator(Writing& writing, const Stimulator& stimulator);
void changeStimulator(Writing& writing, const Stimulator& stimulator);

} // namespace quadrille::db
