// SPDX-License-Identifier: GPL-3.0-or-later
// Changes to the run of blocks of a plan: copied, moved, lengthened, split. Plain functions from
// blocks to blocks; whoever holds the draft decides what is one step of undo.
#pragma once

#include "core/plan.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace quadrille
{

inline constexpr int leastWeeksOfBlock = 1;
inline constexpr int mostWeeksOfBlock = 52;

/// With a copy of block `index` right after it. `index` < blocks.size(), here and below.
std::vector<Block> withBlockCopied(std::vector<Block> blocks, std::size_t index);
/// With block `index` as the `to`-th; the others keep their order. `to` < blocks.size().
std::vector<Block> withBlockMoved(std::vector<Block> blocks, std::size_t index, std::size_t to);
/// With so many weeks in block `index`, brought into 1 … 52; later blocks move along the weeks.
std::vector<Block> withBlockLength(std::vector<Block> blocks, std::size_t index, int weeks);

/// The course weeks at which a block can be split: the second half may begin at each of them.
struct SplitWeeks {
    CourseWeek first;
    CourseWeek last;
    friend bool operator==(const SplitWeeks&, const SplitWeeks&) = default;
};
/// Nothing for a block of one week.
std::optional<SplitWeeks> splitWeeksOf(const std::vector<Block>& blocks, std::size_t index);
/// With block `index` in two, the second of which begins at course week `at`. Both keep everything
/// but their weeks. Outside splitWeeksOf() the blocks stay as they are.
std::vector<Block> withBlockSplit(std::vector<Block> blocks, std::size_t index, CourseWeek at);

/// The lowest channel of the unit that no site of the block lies on; nothing when all are taken.
std::optional<int> freeChannel(const Block& block, const Stimulator& unit);
/// The same site on another channel. What the patient tolerated and the ceiling are left out: they
/// were found where the first site lies.
Site siteOnChannel(const Site& site, int channel);
/// True when the unit forces equal timing upon the sites of the block: they run at once on channels
/// that share it.
bool sharesTiming(const Block& block, const Stimulator& unit);

} // namespace quadrille
