// SPDX-License-Identifier: GPL-3.0-or-later
// Weeks and orders here are counted by hand.
#include "tests/core/examples.h"

#include "core/block_edits.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

/// Blocks told apart by their sessions a day: 1, 2, 3 of 2, 4 and 6 weeks.
std::vector<Block> threeBlocks()
{
    std::vector<Block> blocks(3, someBlock());
    const int weeks[] = {2, 4, 6};
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        blocks[i].weeks = weeks[i];
        blocks[i].sessionsPerDay = static_cast<int>(i) + 1;
    }
    return blocks;
}

std::vector<int> sessionsOf(const std::vector<Block>& blocks)
{
    std::vector<int> sessions;
    sessions.reserve(blocks.size());
    for (const Block& block : blocks) {
        sessions.push_back(block.sessionsPerDay);
    }
    return sessions;
}

std::vector<int> weeksOf(const std::vector<Block>& blocks)
{
    std::vector<int> weeks;
    weeks.reserve(blocks.size());
    for (const Block& block : blocks) {
        weeks.push_back(block.weeks);
    }
    return weeks;
}

} // namespace

TEST(BlockEdits, ACopyStandsRightAfterItsBlock)
{
    const auto blocks = withBlockCopied(threeBlocks(), 1);
    EXPECT_EQ(sessionsOf(blocks), (std::vector{1, 2, 2, 3}));
    EXPECT_EQ(blocks[2], blocks[1]);
    EXPECT_EQ(sessionsOf(withBlockCopied(threeBlocks(), 2)), (std::vector{1, 2, 3, 3}));
}

TEST(BlockEdits, ABlockMovesEarlierAndLaterAndTheOthersKeepTheirOrder)
{
    EXPECT_EQ(sessionsOf(withBlockMoved(threeBlocks(), 2, 0)), (std::vector{3, 1, 2}));
    EXPECT_EQ(sessionsOf(withBlockMoved(threeBlocks(), 0, 2)), (std::vector{2, 3, 1}));
    EXPECT_EQ(sessionsOf(withBlockMoved(threeBlocks(), 1, 2)), (std::vector{1, 3, 2}));
    EXPECT_EQ(withBlockMoved(threeBlocks(), 1, 1), threeBlocks());
    EXPECT_EQ(weeksOf(withBlockMoved(threeBlocks(), 2, 0)), (std::vector{6, 2, 4}))
        << "its weeks go with it";
}

TEST(BlockEdits, ALongerBlockPushesTheLaterOnesAlong)
{
    const auto blocks = withBlockLength(threeBlocks(), 0, 5);
    EXPECT_EQ(weeksOf(blocks), (std::vector{5, 4, 6}));
    EXPECT_EQ(firstWeekOf(blocks, 1), CourseWeek{6});
    EXPECT_EQ(totalWeeks(blocks), 15);
}

TEST(BlockEdits, ABlockHasOneWeekAtLeastAndAYearAtMost)
{
    EXPECT_EQ(withBlockLength(threeBlocks(), 1, 0)[1].weeks, 1);
    EXPECT_EQ(withBlockLength(threeBlocks(), 1, -3)[1].weeks, 1);
    EXPECT_EQ(withBlockLength(threeBlocks(), 1, 53)[1].weeks, 52);
}

TEST(BlockEdits, ASplitKeepsEverythingInBothHalves)
{
    // Block 2 lasts from week 3 to week 6; from week 5 on it is the second half.
    const auto blocks = withBlockSplit(threeBlocks(), 1, CourseWeek{5});
    EXPECT_EQ(weeksOf(blocks), (std::vector{2, 2, 2, 6}));
    EXPECT_EQ(sessionsOf(blocks), (std::vector{1, 2, 2, 3}));
    EXPECT_EQ(firstWeekOf(blocks, 2), CourseWeek{5});
    Block second = blocks[2];
    second.weeks = blocks[1].weeks;
    EXPECT_EQ(second, blocks[1]);
    EXPECT_EQ(totalWeeks(blocks), totalWeeks(threeBlocks()));
}

TEST(BlockEdits, EachWeekButTheFirstCanBeginTheSecondHalf)
{
    EXPECT_EQ(splitWeeksOf(threeBlocks(), 1), (SplitWeeks{{4}, {6}}));
    for (int week = 4; week <= 6; ++week) {
        EXPECT_EQ(weeksOf(withBlockSplit(threeBlocks(), 1, CourseWeek{week})),
                  (std::vector{2, week - 3, 7 - week, 6}));
    }
    for (const int week : {1, 3, 7}) {
        EXPECT_EQ(withBlockSplit(threeBlocks(), 1, CourseWeek{week}), threeBlocks()) << week;
    }
}

TEST(BlockEdits, OneWeekCannotBeSplit)
{
    const auto blocks = withBlockLength(threeBlocks(), 0, 1);
    EXPECT_EQ(splitWeeksOf(blocks, 0), std::nullopt);
    EXPECT_EQ(withBlockSplit(blocks, 0, CourseWeek{1}), blocks);
}

TEST(BlockEdits, TheNextSiteLiesOnTheLowestFreeChannel)
{
    Stimulator unit = someStimulator();
    unit.channels = 3;
    Block block;
    EXPECT_EQ(freeChannel(block, unit), 1);
    block.sites = {someSite(1), someSite(3)};
    EXPECT_EQ(freeChannel(block, unit), 2);
    block.sites.push_back(someSite(2));
    EXPECT_EQ(freeChannel(block, unit), std::nullopt);
}

TEST(BlockEdits, ACopiedSiteKeepsAllButTheAmplitudeThatWasFoundElsewhere)
{
    Site site = someSite(1);
    site.position = "sitting";
    site.settings.amplitude = {.lastTolerated = 42_mA, .ceiling = 60_mA};
    const Site copy = siteOnChannel(site, 2);
    EXPECT_EQ(copy.channel, 2);
    EXPECT_EQ(copy.settings.amplitude, AmplitudeGuidance{});
    Site expected = site;
    expected.channel = 2;
    expected.settings.amplitude = {};
    EXPECT_EQ(copy, expected);
}

TEST(BlockEdits, TimingIsSharedOnlyWhereTheUnitSharesItAndSitesRunAtOnce)
{
    Block block = someBlock();
    Stimulator unit = someStimulator();
    EXPECT_TRUE(sharesTiming(block, unit));
    block.siteOrder = SiteOrder::oneAfterAnother;
    EXPECT_FALSE(sharesTiming(block, unit));
    block.siteOrder = SiteOrder::together;
    unit.channelsShareTiming = false;
    EXPECT_FALSE(sharesTiming(block, unit));
}
