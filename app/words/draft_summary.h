// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/plan.h"

#include <QString>

#include <vector>

namespace quadrille::app
{

/// A draft in a few lines: its unit, then each block with weeks, days, sites and settings.
QString draftSummary(const Draft& draft, const std::vector<Stimulator>& units,
                     const QuantityText& text);

} // namespace quadrille::app
