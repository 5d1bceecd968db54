// SPDX-License-Identifier: GPL-3.0-or-later
// Ratios against the reference table of sessions; what may be compared against the three points on
// which experiments contradict the model (Bickel et al., J Rehabil Res Dev 2012;49(2)).
#include "tests/core/examples.h"
#include "tests/core/reference_cases.h"

#include "core/block_fatigue.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace
{

constexpr Date monday = sys_days(2026y / March / 2);

Block blockWith(Milliseconds onTime, Milliseconds offTime)
{
    Block block = someBlock();
    block.weeks = 2;
    block.sites.front().settings.onTime = onTime;
    block.sites.front().settings.offTime = offTime;
    return block;
}

std::vector<WeekFatigue> byWeek(const std::vector<Block>& blocks, std::size_t chosen)
{
    Plan plan;
    plan.fromDate = monday;
    plan.stimulator = someStimulator();
    plan.blocks = blocks;
    Course course;
    course.startDate = monday;
    FatigueMemory memory;
    return fatigueByWeek(course, {plan}, blocks[chosen].sites.front(), plan.stimulator, memory);
}

} // namespace

TEST(FatigueStep, ShowsBothRatiosWhereOnlyTheOffTimeDiffers)
{
    // The table's cases of 50 Hz, 12 min: 6 s on with 6 s off, and with 18 s off.
    constexpr std::size_t shortRest = 5;
    constexpr std::size_t longRest = 6;
    const ReferenceTable table = referenceSessions();
    Block before = someBlock();
    before.sites.front().settings = settingsOfCase(table, shortRest);
    Block now = before;
    now.sites.front().settings = settingsOfCase(table, longRest);
    FatigueMemory memory;
    const auto steps = fatigueSteps(now, &before, someStimulator(), memory);
    ASSERT_EQ(steps.size(), 1U);
    EXPECT_FALSE(steps[0].missing);
    expectCell(table, longRest, "fti_ratio_last_first", steps[0].now->forceTimeIntegral);
    expectCell(table, longRest, "peak_ratio_last_first", steps[0].now->peak);
    expectCell(table, shortRest, "fti_ratio_last_first", steps[0].before->forceTimeIntegral);
    EXPECT_FALSE(steps[0].limits.empty());
}

TEST(FatigueStep, SaysThatThereIsNoBlockBefore)
{
    FatigueMemory memory;
    const auto steps = fatigueSteps(someBlock(), nullptr, someStimulator(), memory);
    EXPECT_EQ(steps[0].missing, NoFatigueRatio::noBlockBefore);
    EXPECT_FALSE(steps[0].now);
    EXPECT_EQ(memory.computed(), 0U) << "what is not shown is not asked";
}

TEST(FatigueStep, RefusesWhatTheModelMisleadsOn)
{
    FatigueMemory memory;
    const Block before = someBlock();
    Block frequency = before;
    frequency.sites.front().settings.pulseFrequency = 30_Hz;
    const auto steps = fatigueSteps(frequency, &before, someStimulator(), memory);
    EXPECT_EQ(steps[0].missing, NoFatigueRatio::modelMisleads);
    EXPECT_EQ(steps[0].comparability.refusals.front(), ModelRefusal::frequencyDiffers);
    const Block longer = blockWith(8s, 24s);
    const auto other = fatigueSteps(longer, &before, someStimulator(), memory);
    EXPECT_EQ(other[0].missing, NoFatigueRatio::modelMisleads);
    EXPECT_EQ(other[0].comparability.refusals.front(), ModelRefusal::onPhaseDiffers);
    EXPECT_FALSE(other[0].now);
    EXPECT_FALSE(other[0].before);
}

TEST(FatigueStep, RefusesAnotherFormOfThePulse)
{
    const Block before = someBlock();
    Block asymmetric = before;
    Settings& settings = asymmetric.sites.front().settings;
    settings.waveform = Waveform::asymmetricBalancedBiphasic;
    settings.secondPhaseDuration = 900_us;
    const Block longerSecond = [&] {
        Block block = asymmetric;
        block.sites.front().settings.secondPhaseDuration = 1200_us;
        return block;
    }();
    Block gap = before;
    gap.sites.front().settings.interphaseGap = 100_us;
    FatigueMemory memory;
    for (const auto& [now, against] : {std::pair(gap, before), {longerSecond, asymmetric}}) {
        const auto steps = fatigueSteps(now, &against, someStimulator(), memory);
        ASSERT_EQ(steps.size(), 1U);
        EXPECT_EQ(steps[0].missing, NoFatigueRatio::modelMisleads);
        EXPECT_EQ(steps[0].comparability.refusals, std::vector{ModelRefusal::pulseFormDiffers});
        EXPECT_FALSE(steps[0].now);
    }
    EXPECT_EQ(memory.computed(), 0U) << "what must not be compared is not asked";
}

TEST(FatigueStep, RefusesAnotherCarrierAndBurstDuty)
{
    Settings bursts = someSettings();
    bursts.waveform = Waveform::kilohertzBursts;
    bursts.carrierFrequency = 2500_Hz_carrier;
    bursts.burstDuty = 20_percent_burst;
    Settings carrier = bursts;
    carrier.carrierFrequency = 4000_Hz_carrier;
    Settings duty = bursts;
    duty.burstDuty = 50_percent_burst;
    const auto included = RampHabit::includedInOnTime;
    for (const Settings& other : {carrier, duty}) {
        EXPECT_EQ(modelComparability(bursts, included, other, included).refusals,
                  std::vector{ModelRefusal::pulseFormDiffers});
    }
}

TEST(FatigueStep, TakesNoNoticeOfWhatTheWaveformLeavesAside)
{
    // A unit with asymmetric pulses and bursts fills these in; symmetric pulses have none of them.
    Block before = someBlock();
    Settings& settings = before.sites.front().settings;
    settings.secondPhaseDuration = 900_us;
    settings.carrierFrequency = 2500_Hz_carrier;
    settings.burstDuty = 20_percent_burst;
    Block now = someBlock();
    now.sites.front().settings.offTime = 18s;
    FatigueMemory memory;
    const auto steps = fatigueSteps(now, &before, someStimulator(), memory);
    ASSERT_EQ(steps.size(), 1U);
    EXPECT_FALSE(steps[0].missing);
}

TEST(FatigueByWeek, LeavesWeeksOutWithAnotherGapBetweenThePhases)
{
    Block gap = blockWith(4s, 18s);
    gap.sites.front().settings.interphaseGap = 100_us;
    const auto weeks = byWeek({blockWith(4s, 6s), blockWith(4s, 12s), gap}, 0);
    ASSERT_EQ(weeks.size(), 6U);
    EXPECT_TRUE(weeks[2].ratio);
    EXPECT_FALSE(weeks[4].ratio);
}

TEST(FatigueStep, FindsEachMuscleInTheBlockBefore)
{
    Block before = blockWith(4s, 6s);
    Site rectus = someSite(2);
    rectus.muscle = "rectus femoris";
    Block now = someBlock();
    now.sites = {rectus, someSite(1)};
    FatigueMemory memory;
    const auto steps = fatigueSteps(now, &before, someStimulator(), memory);
    EXPECT_EQ(steps[0].missing, NoFatigueRatio::muscleNotBefore);
    EXPECT_FALSE(steps[1].missing);
    before.sites.push_back(before.sites.front());
    now.sites = {someSite(1), someSite(2)};
    EXPECT_EQ(sameSiteBefore(now, 1, before), 1U) << "the second pair by the second";
    EXPECT_EQ(sameSiteBefore(now, 0, before), 0U);
}

TEST(FatigueStep, FindsAMuscleWrittenInOtherLetters)
{
    Block before = someBlock();
    before.sites.front().muscle = "Quadriceps";
    Block now = before;
    now.sites.front().muscle = "quadriceps";
    EXPECT_EQ(sameSiteBefore(now, 0, before), 0U);
    now.sites.front().muscle = "hamstrings";
    EXPECT_FALSE(sameSiteBefore(now, 0, before));
    now.sites.front() = before.sites.front();
    now.sites.front().side = before.sites.front().side == Side::left ? Side::right : Side::left;
    EXPECT_FALSE(sameSiteBefore(now, 0, before));
}

TEST(FatigueStep, SaysWhatCannotRunAndWhatTheModelDoesNotKnow)
{
    FatigueMemory memory;
    const Block before = someBlock();
    const Block without = blockWith(4s, 0s);
    EXPECT_EQ(fatigueSteps(without, &before, someStimulator(), memory)[0].missing,
              NoFatigueRatio::cannotRun);
    Block fast = before;
    fast.sites.front().settings.pulseFrequency = 200_Hz;
    const Block fastBefore = fast;
    fast.sites.front().settings.offTime = 20s;
    EXPECT_EQ(fatigueSteps(fast, &fastBefore, someStimulator(), memory)[0].missing,
              NoFatigueRatio::outsideModel);
}

TEST(PeakShares, BeginWithOneAndEndWithTheRatioOfPeaks)
{
    const ReferenceTable table = referenceSessions();
    const auto shares = peakShares(settingsOfCase(table, 0), someStimulator());
    ASSERT_EQ(shares.size(), 75U);
    EXPECT_EQ(shares.front(), 1.0);
    expectCell(table, 0, "peak_ratio_last_first", shares.back());
}

TEST(PeakShares, AreNoneOutsideTheModel)
{
    Settings settings = someSettings();
    settings.offTime = 0s;
    EXPECT_TRUE(peakShares(settings, someStimulator()).empty());
    settings = someSettings();
    settings.pulseFrequency = 200_Hz;
    EXPECT_TRUE(peakShares(settings, someStimulator()).empty());
}

TEST(FatigueByWeek, LeavesWeeksOutThatMustNotBeCompared)
{
    // Two weeks each: 4/6 s, 4/12 s, 8/24 s.
    const std::vector<Block> blocks{blockWith(4s, 6s), blockWith(4s, 12s), blockWith(8s, 24s)};
    const auto weeks = byWeek(blocks, 0);
    ASSERT_EQ(weeks.size(), 6U);
    EXPECT_EQ(weeks[1].ratio->peak, weeks[0].ratio->peak);
    EXPECT_LT(weeks[0].ratio->peak, weeks[2].ratio->peak);
    EXPECT_TRUE(weeks[3].ratio);
    EXPECT_FALSE(weeks[4].ratio) << "another on phase";
    const auto ofThird = byWeek(blocks, 2);
    ASSERT_EQ(ofThird.size(), 6U);
    for (const WeekFatigue& week : ofThird) {
        EXPECT_FALSE(week.ratio) << "alone there is nothing to compare with, week "
                                 << week.week.number;
    }
}

TEST(FatigueByWeek, SaysNothingWhereAllBlocksAreAlike)
{
    const auto weeks = byWeek({someBlock(), someBlock()}, 0);
    ASSERT_EQ(weeks.size(), std::size_t(2 * someBlock().weeks));
    for (const WeekFatigue& week : weeks) {
        EXPECT_FALSE(week.ratio);
    }
}
