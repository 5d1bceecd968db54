// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/app/screen_renderer.h"

#include "core/ids.h"

namespace quadrille::app
{

/// The starting points as they are for this patient's plan, one's own and published ones.
bool renderStartingPoints(Shown& shown, Renderer& renderer, PatientId planned);

} // namespace quadrille::app
