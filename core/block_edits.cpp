// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/block_edits.h"

#include <algorithm>
#include <utility>

namespace quadrille
{

namespace
{

auto placeOf(std::vector<Block>& blocks, std::size_t index)
{
    return blocks.begin() + static_cast<std::ptrdiff_t>(index);
}

} // namespace

std::vector<Block> withBlockCopied(std::vector<Block> blocks, std::size_t index)
{
    Block copy = blocks[index];
    blocks.insert(placeOf(blocks, index + 1), std::move(copy));
    return blocks;
}

std::vector<Block> withBlockMoved(std::vector<Block> blocks, std::size_t index, std::size_t to)
{
    if (index < to) {
        std::rotate(placeOf(blocks, index), placeOf(blocks, index + 1), placeOf(blocks, to + 1));
    } else {
        std::rotate(placeOf(blocks, to), placeOf(blocks, index), placeOf(blocks, index + 1));
    }
    return blocks;
}

std::vector<Block> withBlockLength(std::vector<Block> blocks, std::size_t index, int weeks)
{
    blocks[index].weeks = std::clamp(weeks, leastWeeksOfBlock, mostWeeksOfBlock);
    return blocks;
}

std::optional<SplitWeeks> splitWeeksOf(const std::vector<Block>& blocks, std::size_t index)
{
    const int first = firstWeekOf(blocks, index).number;
    const int weeks = blocks[index].weeks;
    return weeks > 1 ? std::optional(SplitWeeks{{first + 1}, {first + weeks - 1}}) : std::nullopt;
}

std::vector<Block> withBlockSplit(std::vector<Block> blocks, std::size_t index, CourseWeek at)
{
    const auto possible = splitWeeksOf(blocks, index);
    if (!possible || at < possible->first || at > possible->last) {
        return blocks;
    }
    const int before = at.number - firstWeekOf(blocks, index).number;
    blocks = withBlockCopied(std::move(blocks), index);
    blocks[index].weeks = before;
    blocks[index + 1].weeks -= before;
    return blocks;
}

std::optional<int> freeChannel(const Block& block, const Stimulator& unit)
{
    for (int channel = 1; channel <= unit.channels; ++channel) {
        if (std::ranges::find(block.sites, channel, &Site::channel) == block.sites.end()) {
            return channel;
        }
    }
    return std::nullopt;
}

Site siteOnChannel(const Site& site, int channel)
{
    Site copy = site;
    copy.channel = channel;
    copy.settings.amplitude = {};
    return copy;
}

bool sharesTiming(const Block& block, const Stimulator& unit)
{
    return unit.channelsShareTiming && block.siteOrder == SiteOrder::together;
}

} // namespace quadrille
