// SPDX-License-Identifier: GPL-3.0-or-later
// Pictures of the inventory and of plans on other units.
#pragma once

#include "tests/app/screen_renderer.h"

namespace quadrille::app
{

/// The inventory, lending, what the units can do, and fitting a plan to another unit.
bool renderUnits(Shown& shown, Renderer& renderer, Date today);
/// The plan that is open with a weak unit, settings outside it, and a unit that will not do at all.
bool renderPlanOfUnits(Shown& shown, Renderer& renderer);

} // namespace quadrille::app
