// SPDX-License-Identifier: GPL-3.0-or-later
// The Diary page of records.
#pragma once

#include "tests/app/screen_renderer.h"

namespace quadrille::app
{

/// A copied page, one in work with an entry that can't be saved, a page to come, one week, the
/// counter, and a course without a plan (`bare`).
bool renderDiary(Shown& shown, Renderer& renderer, PatientId copied, PatientId bare);

} // namespace quadrille::app
