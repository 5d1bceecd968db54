// SPDX-License-Identifier: GPL-3.0-or-later
// Pictures of variants beside a block.
#pragma once

#include "tests/app/screen_renderer.h"

namespace quadrille::app
{

/// `planned`: a patient with two blocks; the record is open afterwards.
bool renderWhatIf(Shown& shown, Renderer& renderer, PatientId planned);

} // namespace quadrille::app
