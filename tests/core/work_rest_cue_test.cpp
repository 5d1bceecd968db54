// SPDX-License-Identifier: GPL-3.0-or-later
// The cue follows the planned timing; what is expected is counted by hand from the cycle: ramp up,
// plateau, ramp down, off.
#include "core/work_rest_cue.h"

#include <gtest/gtest.h>

namespace quadrille
{
namespace
{

using namespace std::chrono_literals;

/// 4 s on (ramps of 1 s and 0.5 s inside), 12 s off, for an hour.
Settings anHour()
{
    Settings settings;
    settings.pulseFrequency = PulseFrequency::fromCount(50'000);
    settings.phaseDuration = PhaseDuration::fromCount(300);
    settings.onTime = 4s;
    settings.offTime = 12s;
    settings.rampUp = 1s;
    settings.rampDown = 500ms;
    settings.sessionLength = 1h;
    return settings;
}

SessionTiming timingOf(const Settings& settings, RampHabit habit = RampHabit::includedInOnTime)
{
    return sessionTiming(settings, habit).value();
}

TEST(WorkRestCue, GoesThroughTheCycleInItsOrder)
{
    const SessionTiming timing = timingOf(anHour());
    EXPECT_EQ(cueAt(timing, 0ms), (CueMoment{CuePhase::rampUp, 1s, 1s, 1, 1h}));
    EXPECT_EQ(cueAt(timing, 999ms).phase, CuePhase::rampUp);
    EXPECT_EQ(cueAt(timing, 1s), (CueMoment{CuePhase::hold, 2500ms, 2500ms, 1, 1h - 1s}));
    EXPECT_EQ(cueAt(timing, 3500ms), (CueMoment{CuePhase::rampDown, 500ms, 500ms, 1, 1h - 3500ms}));
    EXPECT_EQ(cueAt(timing, 4s), (CueMoment{CuePhase::rest, 12s, 12s, 1, 1h - 4s}));
    EXPECT_EQ(cueAt(timing, 16s), (CueMoment{CuePhase::rampUp, 1s, 1s, 2, 1h - 16s}));
}

TEST(WorkRestCue, AddsTheRampsWhereTheUnitDoes)
{
    const SessionTiming timing = timingOf(anHour(), RampHabit::addedToOnTime);
    EXPECT_EQ(cueAt(timing, 1s).left, 4s) << "the plateau is the whole on time";
    EXPECT_EQ(cueAt(timing, 5500ms).phase, CuePhase::rest);
}

// Over an hour with a clock that only the test turns: each change comes when the cycle says.
TEST(WorkRestCue, KeepsTheRhythmForAnHourWithoutDrift)
{
    const SessionTiming timing = timingOf(anHour());
    Milliseconds now = 0ms;
    std::int64_t contractions = 0;
    Milliseconds worked = 0ms;
    while (const auto next = nextCueChange(timing, now)) {
        const CueMoment cue = cueAt(timing, now);
        ASSERT_GT(*next, now);
        if (cue.phase == CuePhase::rampUp) {
            ++contractions;
            ASSERT_EQ(now % 16s, 0ms) << "contraction " << contractions;
            ASSERT_EQ(cue.contraction, contractions);
        }
        if (cue.phase != CuePhase::rest) {
            worked += *next - now;
        }
        now = *next;
    }
    EXPECT_EQ(now, 1h);
    EXPECT_EQ(contractions, 225) << "3600 s / 16 s";
    EXPECT_EQ(contractions, timing.contractionsStarted);
    EXPECT_EQ(worked, timing.totalOnTime);
    EXPECT_EQ(cueAt(timing, 1h).phase, CuePhase::over);
    EXPECT_EQ(cueAt(timing, 1h).contraction, 225);
    EXPECT_EQ(cueAt(timing, 2h).left, 0ms);
}

TEST(WorkRestCue, SkipsRampsOfNoLength)
{
    Settings settings = anHour();
    settings.rampUp = settings.rampDown = 0ms;
    const SessionTiming timing = timingOf(settings);
    EXPECT_EQ(cueAt(timing, 0ms).phase, CuePhase::hold);
    EXPECT_EQ(*nextCueChange(timing, 0ms), 4s);
    EXPECT_EQ(cueAt(timing, 4s).phase, CuePhase::rest);
}

TEST(WorkRestCue, EndsInsideAContractionWhereTheSessionDoes)
{
    Settings settings = anHour();
    settings.sessionLength = 18s;
    const SessionTiming timing = timingOf(settings);
    EXPECT_EQ(cueAt(timing, 17s), (CueMoment{CuePhase::hold, 1s, 1s, 2, 1s}));
    EXPECT_EQ(cueAt(timing, 18s).phase, CuePhase::over);
}

TEST(WorkRestCue, BeginsWithRestOnAUnitThatDoes)
{
    const SessionTiming timing =
        sessionTiming(anHour(), RampHabit::includedInOnTime, CycleStart::withOff).value();
    EXPECT_EQ(cueAt(timing, 0ms), (CueMoment{CuePhase::rest, 12s, 12s, 0, 1h}));
    EXPECT_EQ(cueAt(timing, 11999ms).left, 1ms);
    EXPECT_EQ(cueAt(timing, 12s), (CueMoment{CuePhase::rampUp, 1s, 1s, 1, 1h - 12s}));
    EXPECT_EQ(cueAt(timing, 28s).contraction, 2);
    EXPECT_EQ(cueAt(timing, 1h).contraction, timing.contractionsStarted);
}

TEST(WorkRestCue, BeforeTheStartShowsTheStart)
{
    const SessionTiming timing = timingOf(anHour());
    EXPECT_EQ(cueAt(timing, -5s), cueAt(timing, 0ms));
}

TEST(PractiseClock, StandsWhilePausedAndGoesOnWhereItStood)
{
    PractiseClock clock;
    EXPECT_EQ(clock.elapsed(10s), 0ms);
    clock.start(10s);
    EXPECT_EQ(clock.elapsed(13s), 3s);
    clock.start(12s); // a second start changes nothing
    EXPECT_EQ(clock.elapsed(13s), 3s);
    clock.pause(14s);
    EXPECT_FALSE(clock.isRunning());
    EXPECT_EQ(clock.elapsed(60s), 4s);
    clock.start(60s);
    EXPECT_EQ(clock.elapsed(61s), 5s);
    clock.reset();
    EXPECT_EQ(clock.elapsed(99s), 0ms);
}

TEST(PractiseClock, NeverRunsBackwards)
{
    PractiseClock clock;
    clock.start(10s);
    EXPECT_EQ(clock.elapsed(9s), 0ms);
}

} // namespace
} // namespace quadrille
