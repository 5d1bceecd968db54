// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"

#include "core/fatigue_memory.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

TEST(FatigueMemory, ComputesTheSameSessionOnce)
{
    FatigueMemory memory;
    const auto first = memory.predict(someSettings(), RampHabit::includedInOnTime);
    const auto again = memory.predict(someSettings(), RampHabit::includedInOnTime);
    ASSERT_TRUE(first && again);
    EXPECT_EQ(first->lastToFirst->peak, again->lastToFirst->peak);
    EXPECT_EQ(memory.computed(), 1U);
}

TEST(FatigueMemory, ComputesNothingAnewForAnotherAmplitudeOrPhaseDuration)
{
    FatigueMemory memory;
    (void)memory.predict(someSettings(), RampHabit::includedInOnTime);
    Settings other = someSettings();
    other.amplitude.ceiling = 60_mA;
    other.phaseDuration = 250_us;
    (void)memory.predict(other, RampHabit::includedInOnTime);
    EXPECT_EQ(memory.computed(), 1U);
    FatigueOptions recruits;
    recruits.phaseDurationRecruits = true;
    (void)memory.predict(other, RampHabit::includedInOnTime, recruits);
    other.phaseDuration = 350_us;
    (void)memory.predict(other, RampHabit::includedInOnTime, recruits);
    EXPECT_EQ(memory.computed(), 3U);
}

TEST(FatigueMemory, TellsEverySettingThatEntersTheModelApart)
{
    FatigueMemory memory;
    const auto predictWith = [&memory](void (*change)(Settings&)) {
        Settings settings = someSettings();
        change(settings);
        ASSERT_TRUE(memory.predict(settings, RampHabit::includedInOnTime));
    };
    predictWith([](Settings&) {});
    predictWith([](Settings& s) { s.pulseFrequency = 45_Hz; });
    predictWith([](Settings& s) { s.onTime = 5s; });
    predictWith([](Settings& s) { s.offTime = 13s; });
    predictWith([](Settings& s) { s.rampUp = 1s; });
    predictWith([](Settings& s) { s.rampDown = 1s; });
    predictWith([](Settings& s) { s.sessionLength = 21min; });
    Settings ramps = someSettings();
    ramps.rampUp = 1s;
    ASSERT_TRUE(memory.predict(ramps, RampHabit::addedToOnTime));
    EXPECT_EQ(memory.computed(), 8U);
}

TEST(FatigueMemory, StillRefusesPulsesThatOverlapThoughTheModelTakesNoNoticeOfThem)
{
    FatigueMemory memory;
    ASSERT_TRUE(memory.predict(someSettings(), RampHabit::includedInOnTime));
    Settings overlapping = someSettings();
    overlapping.phaseDuration = PhaseDuration::fromCount(300'000); // 300 ms for 300 µs
    EXPECT_FALSE(memory.predict(overlapping, RampHabit::includedInOnTime));
}

TEST(FatigueMemory, ForgetsWhatWasAskedForLongestAgo)
{
    FatigueMemory memory(2);
    const auto ask = [&memory](Milliseconds off) {
        Settings settings = someSettings();
        settings.offTime = off;
        ASSERT_TRUE(memory.predict(settings, RampHabit::includedInOnTime));
    };
    ask(10s);
    ask(11s);
    ask(10s);
    ask(12s); // 11 s falls out
    EXPECT_EQ(memory.size(), 2U);
    ask(10s);
    EXPECT_EQ(memory.computed(), 3U);
    ask(11s);
    EXPECT_EQ(memory.computed(), 4U);
}
