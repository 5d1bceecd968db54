// SPDX-License-Identifier: GPL-3.0-or-later
// Figures here are worked by hand: 4 s on, 12 s off for 20 min are 75 contractions and 300 s, five
// days a week 375 contractions and 25 min.
#include "tests/core/examples.h"

#include "core/block_changes.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

Block blockOfTwo()
{
    Block block = someBlock();
    block.sites.push_back(someSite(2));
    block.sites.back().muscle = "vastus lateralis";
    return block;
}

StepSize stepBetween(const Block& before, const Block& after)
{
    return stepSize(blockFigures(before, someStimulator()), blockFigures(after, someStimulator()));
}

} // namespace

TEST(BlockChanges, TwoEqualBlocksHaveNone)
{
    EXPECT_TRUE(blockChanges(blockOfTwo(), blockOfTwo()).empty());
}

TEST(BlockChanges, MoreWeeksAreNoChangeOfWhatIsAsked)
{
    Block longer = someBlock();
    longer.weeks = 6;
    EXPECT_TRUE(blockChanges(someBlock(), longer).empty());
}

TEST(BlockChanges, ASettingThatAllSitesShareIsNamedOnce)
{
    Block after = blockOfTwo();
    for (Site& site : after.sites) {
        site.settings.onTime = 6s;
    }
    EXPECT_EQ(blockChanges(blockOfTwo(), after),
              (std::vector<BlockChange>{{ChangedPart::setting, Field::onTime, 0, 0, true}}));
}

TEST(BlockChanges, AnAmplitudeIsNamedWithItsSite)
{
    Block after = blockOfTwo();
    after.sites[1].settings.amplitude.ceiling = 55_mA;
    EXPECT_EQ(
        blockChanges(blockOfTwo(), after),
        (std::vector<BlockChange>{{ChangedPart::setting, Field::amplitudeCeiling, 1, 1, false}}));
}

TEST(BlockChanges, SitesThatChangeFromDifferentValuesAreNamedOneByOne)
{
    Block before = blockOfTwo();
    before.sites[1].settings.onTime = 5s;
    Block after = blockOfTwo();
    for (Site& site : after.sites) {
        site.settings.onTime = 6s;
    }
    EXPECT_EQ(blockChanges(before, after),
              (std::vector<BlockChange>{{ChangedPart::setting, Field::onTime, 0, 0, false},
                                        {ChangedPart::setting, Field::onTime, 1, 1, false}}));
}

TEST(BlockChanges, AMuscleWrittenInOtherLettersIsTheSameSite)
{
    Block after = blockOfTwo();
    after.sites[0].muscle = "Vastus Medialis";
    EXPECT_TRUE(blockChanges(blockOfTwo(), after).empty());
}

TEST(BlockChanges, ASiteIsKnownByMuscleAndSideWhateverItsPlaceAndChannel)
{
    Block after = blockOfTwo();
    std::swap(after.sites[0], after.sites[1]);
    EXPECT_TRUE(blockChanges(blockOfTwo(), after).empty()) << "the order in the list says nothing";
    std::swap(after.sites[0].channel, after.sites[1].channel);
    EXPECT_EQ(blockChanges(blockOfTwo(), after),
              (std::vector<BlockChange>{{ChangedPart::channel, Field::channel, 1, 0, false},
                                        {ChangedPart::channel, Field::channel, 0, 1, false}}));
}

TEST(BlockChanges, SitesComeAndGo)
{
    Block after = blockOfTwo();
    after.sites[1].side = Side::left;
    EXPECT_EQ(
        blockChanges(blockOfTwo(), after),
        (std::vector<BlockChange>{{ChangedPart::siteRemoved, Field::none, 1, std::nullopt, false},
                                  {ChangedPart::siteAdded, Field::none, std::nullopt, 1, false}}));
}

TEST(BlockChanges, DaysSessionsAndTheOrderOfSitesAreTheBlocksOwn)
{
    Block after = blockOfTwo();
    after.schedule = DaysPerWeek{4};
    after.sessionsPerDay = 2;
    after.siteOrder = SiteOrder::oneAfterAnother;
    const auto changes = blockChanges(blockOfTwo(), after);
    ASSERT_EQ(changes.size(), 3U);
    EXPECT_EQ(changes[0].part, ChangedPart::schedule);
    EXPECT_EQ(changes[1].part, ChangedPart::sessionsPerDay);
    EXPECT_EQ(changes[2].part, ChangedPart::siteOrder);
}

TEST(BlockChanges, AValueThatTheWaveformLeavesAsideIsNotCompared)
{
    Block after = someBlock();
    after.sites[0].settings.burstDuty = 20_percent_burst;
    EXPECT_TRUE(blockChanges(someBlock(), after).empty());
}

TEST(BlockChanges, PlacementIsNamedByWhatDiffers)
{
    Block after = someBlock();
    after.sites[0].pads[0].width = 60_mm;
    after.sites[0].position = "lying";
    after.sites[0].instruction = "Let go slowly.";
    const auto changes = blockChanges(someBlock(), after);
    ASSERT_EQ(changes.size(), 3U);
    EXPECT_EQ(changes[0].part, ChangedPart::pads);
    EXPECT_EQ(changes[1].part, ChangedPart::position);
    EXPECT_EQ(changes[2].part, ChangedPart::instruction);
}

TEST(StepSize, IsTheShareByWhichTheWeekGrows)
{
    Block after = someBlock();
    after.sites[0].settings.onTime = 5s;
    after.sites[0].settings.offTime = 11s; // the same cycle: 75 contractions, 375 s
    const StepSize step = stepBetween(someBlock(), after);
    EXPECT_DOUBLE_EQ(step.onTime.value(), 0.25);
    EXPECT_DOUBLE_EQ(step.contractions.value(), 0.0);
}

TEST(StepSize, CanBeAStepDown)
{
    Block after = someBlock();
    after.schedule = DaysPerWeek{4};
    EXPECT_DOUBLE_EQ(stepBetween(someBlock(), after).onTime.value(), -0.2);
    EXPECT_DOUBLE_EQ(stepBetween(someBlock(), after).contractions.value(), -0.2);
}

TEST(StepSize, IsNotKnownWhileABlockHasNoFigures)
{
    Block empty;
    EXPECT_EQ(stepBetween(empty, someBlock()).onTime, std::nullopt);
    EXPECT_EQ(stepBetween(someBlock(), empty).contractions, std::nullopt);
    EXPECT_EQ(stepSize(BlockFigures{.sites = {}, .findings = {}, .weekOnTime = 0ms},
                       blockFigures(someBlock(), someStimulator()))
                  .onTime,
              std::nullopt)
        << "no share of nothing";
}
