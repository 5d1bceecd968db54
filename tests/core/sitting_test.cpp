// SPDX-License-Identifier: GPL-3.0-or-later
// What a sitting delivers when it is cut short; contractions counted by hand on a line of time.
#include "tests/core/examples.h"

#include "core/plan_figures.h"
#include "core/sitting.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

constexpr RampHabit included = RampHabit::includedInOnTime;

Sitting sittingOf(const Block& block, RampHabit habit = included)
{
    return Sitting::of(block, habit).value();
}

/// 2 s on, 3 s off, 20 min on channel 2: another cycle than the first site's 4 s on, 12 s off.
Block blockOfTwoSites(SiteOrder order)
{
    Block block = someBlock();
    block.siteOrder = order;
    block.sites.push_back(someSite(2));
    block.sites.back().settings.onTime = 2s;
    block.sites.back().settings.offTime = 3s;
    block.sites.back().settings.sessionLength = 10min;
    return block;
}

} // namespace

TEST(Sitting, IsCountedContractionByContraction)
{
    // 4 s on, 12 s off: on phases begin at 0, 16, 32 … s.
    const Sitting sitting = sittingOf(someBlock());
    EXPECT_EQ(sitting.after(0s), (SittingDose{0s, 0, 0s}));
    EXPECT_EQ(sitting.after(3s), (SittingDose{3s, 0, 3s}));
    EXPECT_EQ(sitting.after(4s), (SittingDose{4s, 1, 4s}));
    EXPECT_EQ(sitting.after(16s), (SittingDose{16s, 1, 4s}));
    EXPECT_EQ(sitting.after(18s), (SittingDose{18s, 1, 6s}));
    EXPECT_EQ(sitting.after(19'999ms), (SittingDose{19'999ms, 1, 7'999ms}));
    EXPECT_EQ(sitting.after(20s), (SittingDose{20s, 2, 8s}));
}

TEST(Sitting, WaitsFirstOnAUnitThatBeginsWithAnOffTime)
{
    // 12 s off, then 4 s on and 12 s off: on phases begin at 12, 28 … s; 1188 s hold 74.25 cycles.
    const Sitting sitting = Sitting::of(someBlock(), included, CycleStart::withOff).value();
    EXPECT_EQ(sitting.after(12s), (SittingDose{12s, 0, 0s}));
    EXPECT_EQ(sitting.after(16s), (SittingDose{16s, 1, 4s}));
    EXPECT_EQ(sitting.after(30s), (SittingDose{30s, 1, 6s}));
    EXPECT_EQ(sitting.whole(), (SittingDose{20min, 75, 300s}));
}

TEST(Sitting, DeliversNoMoreThanTheWhole)
{
    const Sitting sitting = sittingOf(someBlock());
    EXPECT_EQ(sitting.whole(), (SittingDose{20min, 75, 300s}));
    EXPECT_EQ(sitting.after(20min), sitting.whole());
    EXPECT_EQ(sitting.after(3h), sitting.whole());
    EXPECT_EQ(sitting.after(-1min), (SittingDose{}));
}

TEST(Sitting, CountsRampsThatAreAddedToTheOnTime)
{
    Block block = someBlock();
    block.sites.front().settings.rampUp = 1s;
    block.sites.front().settings.rampDown = 1s;
    // 6 s on, 12 s off.
    const Sitting sitting = sittingOf(block, RampHabit::addedToOnTime);
    EXPECT_EQ(sitting.after(5s), (SittingDose{5s, 0, 5s}));
    EXPECT_EQ(sitting.after(24s), (SittingDose{24s, 2, 12s}));
}

TEST(Sitting, AtOnceTakesTheMostOfAnySite)
{
    const Sitting sitting = sittingOf(blockOfTwoSites(SiteOrder::together));
    // The first: 75 contractions, 300 s in 20 min. The second: 120 of 2 s in its 10 min.
    EXPECT_EQ(sitting.whole(), (SittingDose{20min, 120, 300s}));
    // 5 min: 19 contractions (18 cycles, 12 s) of 4 s; 60 of 2 s.
    EXPECT_EQ(sitting.after(5min), (SittingDose{5min, 60, 120s}));
    // 15 min: 57 (56 cycles, 4 s) of 4 s; the second ended after 10 min.
    EXPECT_EQ(sitting.after(15min), (SittingDose{15min, 120, 240s}));
}

TEST(Sitting, InTurnAddsUpInTheOrderOfTheBlock)
{
    const Sitting sitting = sittingOf(blockOfTwoSites(SiteOrder::oneAfterAnother));
    EXPECT_EQ(sitting.whole(), (SittingDose{30min, 195, 540s}));
    EXPECT_EQ(sitting.after(20min), (SittingDose{20min, 75, 300s}));
    EXPECT_EQ(sitting.after(25min), (SittingDose{25min, 135, 420s}));
}

TEST(Sitting, AgreesWithTheFiguresOfTheBlock)
{
    for (const SiteOrder order : {SiteOrder::together, SiteOrder::oneAfterAnother}) {
        const Block block = blockOfTwoSites(order);
        const BlockFigures figures = blockFigures(block, someStimulator());
        const SittingDose whole = sittingOf(block, someStimulator().rampHabit).whole();
        EXPECT_EQ(whole.time, figures.sitting);
        EXPECT_EQ(whole.contractions, figures.contractions);
        EXPECT_EQ(whole.onTime * sessionsPerWeek(block), figures.weekOnTime);
    }
}

TEST(Sitting, NeedsSitesThatCanRun)
{
    Block block = someBlock();
    block.sites.front().settings.sessionLength = 1s; // shorter than one on phase
    EXPECT_FALSE(Sitting::of(block, included));
    block.sites.clear();
    EXPECT_FALSE(Sitting::of(block, included));
}
