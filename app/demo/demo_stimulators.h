// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/stimulator.h"

#include <vector>

namespace quadrille::app
{

/// The practice's units, one for each DemoUnit, in its order. Invented, of the kinds that the trade
/// knows; the last two won't do for muscle exercise at home, and the program says why.
std::vector<Stimulator> demoStimulators();

} // namespace quadrille::app
