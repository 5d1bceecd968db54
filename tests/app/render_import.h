// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/app/screen_renderer.h"

/// A diary that comes as a file: rows of every state, an open order of dates, a column missing.
bool renderImport(quadrille::app::Shown& shown, quadrille::app::Renderer& renderer,
                  quadrille::PatientId patient);
