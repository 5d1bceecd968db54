// SPDX-License-Identifier: GPL-3.0-or-later
// What one block asks for otherwise than the one before, and how large the step is.
#pragma once

#include "core/plan.h"
#include "core/plan_figures.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace quadrille
{

/// What can differ between two blocks. How many weeks they last is no change of what is asked.
enum class ChangedPart {
    schedule,
    sessionsPerDay,
    siteOrder,
    waveform,
    setting, ///< which one says BlockChange::field
    siteAdded,
    siteRemoved,
    channel,
    pads,
    position,
    instruction,
};

/// One difference. What it is from and to stands in the blocks themselves.
struct BlockChange {
    ChangedPart part = ChangedPart::setting;
    Field field = Field::none;
    /// Places of the site in the two blocks. Of a change that all sites of both share, the first
    /// ones; of a site that came or went, the one where it is.
    std::optional<std::size_t> siteBefore = std::nullopt;
    std::optional<std::size_t> siteAfter = std::nullopt;
    bool inAllSites = false; ///< every site goes from the same value to the same other one
    friend bool operator==(const BlockChange&, const BlockChange&) = default;
};

/// All differences: the block's own, then sites that came or went, then those of settings and
/// placement. A site is the same when muscle and side are; of several alike the order decides.
std::vector<BlockChange> blockChanges(const Block& before, const Block& after);

/// By which share the week grows from one block to the next: 0.25 is a quarter more. Nothing where
/// one of the two is not known, or nothing was asked before.
struct StepSize {
    std::optional<double> onTime = std::nullopt;
    std::optional<double> contractions = std::nullopt;
};
StepSize stepSize(const BlockFigures& before, const BlockFigures& after);

} // namespace quadrille
