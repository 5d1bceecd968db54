// SPDX-License-Identifier: GPL-3.0-or-later
// Figures here are worked by hand: 4 s on, 12 s off for 20 min are 75 contractions and 300 s.
#include "tests/core/examples.h"

#include "core/limits.h"
#include "core/plan_figures.h"

#include <algorithm>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

/// A second muscle with other timing: 10 s on, 50 s off, 10 min are 10 contractions and 100 s.
Site slowSite()
{
    Site site = someSite(2);
    site.settings.onTime = 10s;
    site.settings.offTime = 50s;
    site.settings.sessionLength = 10min;
    return site;
}

Block blockOfTwo(SiteOrder order)
{
    Block block = someBlock();
    block.sites.push_back(slowSite());
    block.siteOrder = order;
    return block;
}

Stimulator unitWithOwnTimings()
{
    Stimulator unit = someStimulator();
    unit.channelsShareTiming = false;
    return unit;
}

bool has(const std::vector<Finding>& findings, FindingCode code)
{
    return std::ranges::find(findings, code, &Finding::code) != findings.end();
}

BlockFigures withWeekOnTime(Milliseconds time)
{
    BlockFigures figures;
    figures.weekOnTime = time;
    return figures;
}

} // namespace

TEST(BlockFigures, OfOneSiteAreThoseOfItsSession)
{
    const BlockFigures figures = blockFigures(someBlock(), someStimulator());
    EXPECT_FALSE(figures.hasStop());
    EXPECT_TRUE(figures.findings.empty());
    ASSERT_EQ(figures.sites.size(), 1U);
    EXPECT_TRUE(figures.sites[0].findings.empty());
    ASSERT_TRUE(figures.sites[0].timing);
    EXPECT_EQ(figures.sites[0].timing->contractionsCompleted, 75);
    EXPECT_EQ(figures.sitting, 20min);
    EXPECT_EQ(figures.contractions, 75);
    EXPECT_EQ(figures.weekOnTime, 1500s);
    EXPECT_EQ(figures.weekContractions, 375);
}

TEST(BlockFigures, OfSitesTogetherTakeTheLongest)
{
    const BlockFigures figures =
        blockFigures(blockOfTwo(SiteOrder::together), unitWithOwnTimings());
    EXPECT_FALSE(figures.hasStop());
    EXPECT_EQ(figures.sitting, 20min);
    EXPECT_EQ(figures.contractions, 75);
    EXPECT_EQ(figures.weekOnTime, 5 * 300s);
    EXPECT_EQ(figures.weekContractions, 5 * 75);
}

TEST(BlockFigures, OfSitesOneAfterAnotherAddUp)
{
    const BlockFigures figures =
        blockFigures(blockOfTwo(SiteOrder::oneAfterAnother), unitWithOwnTimings());
    EXPECT_FALSE(figures.hasStop());
    EXPECT_EQ(figures.sitting, 30min);
    EXPECT_EQ(figures.contractions, 85);
    EXPECT_EQ(figures.weekOnTime, 5 * (300s + 100s));
    EXPECT_EQ(figures.weekContractions, 5 * 85);
}

TEST(BlockFigures, AUnitWithSharedTimingForcesEqualTimingOnSitesThatRunTogether)
{
    const BlockFigures together = blockFigures(blockOfTwo(SiteOrder::together), someStimulator());
    EXPECT_EQ(codesOf(together.findings), std::vector{FindingCode::timingMustBeShared});
    EXPECT_TRUE(together.hasStop());
    const BlockFigures inTurn =
        blockFigures(blockOfTwo(SiteOrder::oneAfterAnother), someStimulator());
    EXPECT_FALSE(inTurn.hasStop());

    Block equal = someBlock();
    equal.sites.push_back(someSite(2));
    equal.sites.back().settings.phaseDuration = 200_us; // a width of its own is no timing
    EXPECT_FALSE(blockFigures(equal, someStimulator()).hasStop());
    equal.sites.back().settings.pulseFrequency = 35_Hz;
    EXPECT_TRUE(blockFigures(equal, someStimulator()).hasStop());
}

TEST(BlockFigures, AChannelServesOneSiteAtATime)
{
    Block block = someBlock();
    block.sites.push_back(someSite(1));
    const BlockFigures together = blockFigures(block, someStimulator());
    ASSERT_EQ(codesOf(together.findings), std::vector{FindingCode::channelUsedTwice});
    EXPECT_EQ(together.findings.front().figure, countOf(1));
    block.siteOrder = SiteOrder::oneAfterAnother;
    EXPECT_FALSE(blockFigures(block, someStimulator()).hasStop());
}

TEST(BlockFigures, AChannelMustExistOnTheUnit)
{
    Block block = someBlock();
    for (const int channel : {0, 3}) {
        block.sites.front().channel = channel;
        const BlockFigures figures = blockFigures(block, someStimulator());
        EXPECT_TRUE(has(figures.sites[0].findings, FindingCode::channelNotThere)) << channel;
        EXPECT_TRUE(figures.hasStop());
    }
}

TEST(BlockFigures, ASiteNeedsAMuscleAndAPadOnEachLead)
{
    Block block = someBlock();
    block.sites.front().muscle.clear();
    EXPECT_TRUE(
        has(blockFigures(block, someStimulator()).sites[0].findings, FindingCode::notFilled));

    block = someBlock();
    block.sites.front().pads.back().lead = Lead::a;
    EXPECT_TRUE(has(blockFigures(block, someStimulator()).sites[0].findings, FindingCode::noPads));
    block.sites.front().pads.clear();
    const BlockFigures figures = blockFigures(block, someStimulator());
    EXPECT_TRUE(has(figures.sites[0].findings, FindingCode::noPads));
    EXPECT_TRUE(figures.sites[0].timing); // times do not depend on pads
    EXPECT_FALSE(figures.sites[0].dose);
}

TEST(BlockFigures, HaveADoseOnlyWhereAmplitudeAndPadsAreKnown)
{
    Block block = someBlock();
    EXPECT_FALSE(blockFigures(block, someStimulator()).sites[0].dose);
    block.sites.front().settings.amplitude.lastTolerated = 60_mA;
    const BlockFigures figures = blockFigures(block, someStimulator());
    ASSERT_TRUE(figures.sites[0].dose);
    EXPECT_NEAR(figures.sites[0].dose->currentDensity.shown(), 0.4157, 0.00005);
    ASSERT_TRUE(figures.sites[0].week);
    ASSERT_TRUE(figures.sites[0].week->charge);
    EXPECT_NEAR(figures.sites[0].week->charge->shown(), 1350.0, 1e-9); // 75 000 × 18 µC
}

TEST(BlockFigures, OfSettingsThatCannotRunAreAbsent)
{
    Block block = someBlock();
    block.sites.push_back(someSite(2));
    block.sites.back().settings.rampUp = 5s;
    const BlockFigures figures = blockFigures(block, unitWithOwnTimings());
    EXPECT_TRUE(figures.hasStop());
    EXPECT_TRUE(figures.sites[0].timing);
    EXPECT_FALSE(figures.sites[1].timing);
    EXPECT_FALSE(figures.sites[1].week);
    EXPECT_EQ(figures.sitting, std::nullopt);
    EXPECT_EQ(figures.weekContractions, std::nullopt);
}

TEST(BlockFigures, ABlockNeedsSitesDaysWeeksAndSessions)
{
    const auto codesWith = [](auto change) {
        Block block = someBlock();
        change(block);
        return codesOf(blockFigures(block, someStimulator()).findings);
    };
    EXPECT_EQ(codesWith([](Block& b) { b.sites.clear(); }), std::vector{FindingCode::noSites});
    EXPECT_EQ(codesWith([](Block& b) { b.schedule = WeekdaySet(); }),
              std::vector{FindingCode::noWeekdays});
    EXPECT_EQ(codesWith([](Block& b) { b.schedule = DaysPerWeek{8}; }),
              std::vector{FindingCode::noWeekdays});
    EXPECT_EQ(codesWith([](Block& b) { b.weeks = 0; }),
              std::vector{FindingCode::outsideArithmetic});
    EXPECT_EQ(codesWith([](Block& b) { b.weeks = 53; }),
              std::vector{FindingCode::outsideArithmetic});
    EXPECT_EQ(codesWith([](Block& b) { b.sessionsPerDay = 7; }),
              std::vector{FindingCode::outsideArithmetic});
    EXPECT_TRUE(codesWith([](Block& b) {
                    b.weeks = 52;
                    b.sessionsPerDay = 6;
                }).empty());
}

TEST(BlockFigures, KeepTheSittingWhenTheWeekIsNotPlannedYet)
{
    Block block = someBlock();
    block.schedule = DaysPerWeek{0};
    const BlockFigures figures = blockFigures(block, someStimulator());
    EXPECT_TRUE(figures.hasStop());
    EXPECT_EQ(figures.sitting, 20min);
    EXPECT_EQ(figures.contractions, 75);
    EXPECT_EQ(figures.weekOnTime, std::nullopt);
    EXPECT_EQ(figures.weekContractions, std::nullopt);
}

TEST(BlockFigures, AUnitThatWillNotDoStopsTheBlock)
{
    Stimulator unit = someStimulator();
    unit.hasWorkRestCycles = false;
    EXPECT_TRUE(has(blockFigures(someBlock(), unit).findings, FindingCode::noWorkRestCycles));
}

// Common practice, no source: a growth of more than half is called large.
TEST(StepFinding, SpeaksUpWhenTheWeeklyOnTimeGrowsByMoreThanHalf)
{
    const BlockFigures before = withWeekOnTime(1000s);
    EXPECT_FALSE(stepFinding(before, withWeekOnTime(1000s)));
    EXPECT_FALSE(stepFinding(before, withWeekOnTime(1500s)));
    EXPECT_FALSE(stepFinding(before, withWeekOnTime(100s))); // less is no large step
    const std::optional<Finding> finding = stepFinding(before, withWeekOnTime(2000s));
    ASSERT_TRUE(finding);
    EXPECT_EQ(finding->code, FindingCode::onTimeStepLarge);
    EXPECT_EQ(finding->severity, Severity::attention);
    EXPECT_EQ(finding->figure, (Amount{100.0, Unit::percent}));
    EXPECT_EQ(finding->limit, (Amount{50.0, Unit::percent}));
    EXPECT_EQ(finding->source, limits::commonPractice);
}

TEST(StepFinding, FollowsThePracticesOwnThreshold)
{
    const BlockFigures before = withWeekOnTime(1000s);
    EXPECT_TRUE(stepFinding(before, withWeekOnTime(1201s), 0.2));
    EXPECT_FALSE(stepFinding(before, withWeekOnTime(1200s), 0.2));
}

TEST(StepFinding, SaysNothingWhereThereIsNothingToCompare)
{
    EXPECT_FALSE(stepFinding(BlockFigures{}, withWeekOnTime(1000s)));
    EXPECT_FALSE(stepFinding(withWeekOnTime(1000s), BlockFigures{}));
    EXPECT_FALSE(stepFinding(withWeekOnTime(0s), withWeekOnTime(1000s)));
}
