// SPDX-License-Identifier: GPL-3.0-or-later
// A paused course, the acts on a course, a block to be split, and plans side by side, for
// render_screens.
#pragma once

#include "tests/app/screen_renderer.h"

#include "core/ids.h"

namespace quadrille::app
{

/// `planned` has two plans, `paused` a course that stands still.
bool renderCourses(Shown& shown, Renderer& renderer, PatientId planned, PatientId paused);

} // namespace quadrille::app
