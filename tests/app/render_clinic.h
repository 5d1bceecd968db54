// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/app/screen_renderer.h"

/// The session in the clinic with the cue running, and the form that erases a patient.
bool renderClinic(quadrille::app::Shown& shown, quadrille::app::Renderer& renderer,
                  quadrille::PatientId patient);
