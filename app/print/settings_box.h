// SPDX-License-Identifier: GPL-3.0-or-later
// The framed box of a card: settings in the unit's order, and each channel with its pads and
// limits.
#pragma once

#include "app/print/handout_words.h"
#include "app/print/spacing.h"
#include "app/print/strips.h"

#include <vector>

namespace quadrille::app
{

/// `left` and `width` are those of the frame.
std::vector<Strip> settingsBox(const CardText& card, PrintSize size, const Spacing& spacing,
                               double left, double width);

} // namespace quadrille::app
