// SPDX-License-Identifier: GPL-3.0-or-later
// The cautions of a handout in our own words. They say what every careful home programme says; the
// practice's own texts will take their place where it has some.
#pragma once

#include "app/print/handout_words.h"

#include "core/handout_content.h"

#include <QString>

namespace quadrille::app
{

/// One sentence; no blame, nothing that changes the dose or moves a pad.
QString cautionText(Caution caution);
/// The whole page.
SafetyText safetyText(const HandoutContent& content);

} // namespace quadrille::app
