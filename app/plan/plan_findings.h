// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/plan/warning_strip.h"
#include "app/words/quantity_text.h"

#include "core/plan.h"
#include "core/plan_figures.h"

#include <QString>

#include <optional>
#include <vector>

namespace quadrille::app
{

/// All findings of a block, the gravest first, each where it belongs: one of all sites stands once,
/// without a site. `before` are the figures of the block before, for the size of the step.
std::vector<PlacedFinding> placedFindings(const BlockFigures& figures,
                                          const std::optional<BlockFigures>& before);
/// The value to which one act can set the field of a finding, so that the unit can do it; nothing
/// where no single act mends it.
std::optional<std::int64_t> remedyCount(const PlacedFinding& placed, const Block* block,
                                        const std::optional<Stimulator>& unit);
/// That act in words: "Set 400 µs"; empty where there is none.
QString remedyText(const PlacedFinding& placed, const Block* block,
                   const std::optional<Stimulator>& unit, const QuantityText& text);

} // namespace quadrille::app
