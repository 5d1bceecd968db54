// SPDX-License-Identifier: GPL-3.0-or-later
// The safety page as strips.
#pragma once

#include "app/print/card_layout.h"

namespace quadrille::app
{

/// Lists, the framed box of reasons to stop, and whom to ring.
std::vector<Strip> safetyStrips(const SafetyText& safety, PrintSize size, const TextColumn& column);

} // namespace quadrille::app
