// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"
#include "tests/core/reference_cases.h"

#include "core/session_timing.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

double seconds(Milliseconds time)
{
    return static_cast<double>(time.count()) / 1000.0;
}

SessionTiming timingOf(const Settings& settings, RampHabit habit)
{
    const Result<SessionTiming> timing = sessionTiming(settings, habit);
    EXPECT_TRUE(timing.has_value());
    return timing ? *timing : SessionTiming{};
}

} // namespace

TEST(SessionTiming, AgreesWithTheReferenceTableOfSessions)
{
    const ReferenceTable table = referenceSessions();
    ASSERT_EQ(table.rowCount(), 22U);
    for (std::size_t row = 0; row < table.rowCount(); ++row) {
        SCOPED_TRACE(table.text(row, "case_id"));
        const SessionTiming timing = timingOf(settingsOfCase(table, row), habitOfCase(table, row));
        expectCell(table, row, "stim_s", seconds(timing.onPhase));
        expectCell(table, row, "plateau_s", seconds(timing.plateau));
        expectCell(table, row, "cycle_s", seconds(timing.cycle));
        expectCount(table, row, "cycles_complete", timing.cyclesComplete);
        expectCell(table, row, "remainder_s", seconds(timing.remainder));
        expectCount(table, row, "contractions_started", timing.contractionsStarted);
        expectCount(table, row, "contractions_full", timing.contractionsCompleted);
        expectCell(table, row, "cut_contraction_s", seconds(timing.cutContraction));
        expectCell(table, row, "on_time_s", seconds(timing.totalOnTime));
        expectCell(table, row, "duty_cycle", timing.dutyCycle());
        expectCell(table, row, "off_on_ratio", timing.offOnRatio());
        expectCount(table, row, "pulses_per_contraction", timing.pulsesPerContraction);
        expectCount(table, row, "pulses", timing.pulses);
    }
}

// Common practice, no source: 4 s on, 12 s off, 59 min. 221 cycles of 16 s are 3536 s; the
// remaining 4 s are one whole on phase.
TEST(SessionTiming, ASessionThatEndsExactlyWithAnOnPhaseHasCompletedThatContraction)
{
    Settings settings = someSettings();
    settings.sessionLength = 59min;
    const SessionTiming timing = timingOf(settings, RampHabit::includedInOnTime);
    EXPECT_EQ(timing.contractionsCompleted, 222);
    EXPECT_EQ(timing.contractionsStarted, 222);
    EXPECT_EQ(timing.cutContraction, 0ms);
}

TEST(SessionTiming, OneMillisecondLessCutsTheLastContraction)
{
    Settings settings = someSettings();
    settings.sessionLength = 59min - 1ms;
    const SessionTiming timing = timingOf(settings, RampHabit::includedInOnTime);
    EXPECT_EQ(timing.contractionsCompleted, 221);
    EXPECT_EQ(timing.contractionsStarted, 222);
    EXPECT_EQ(timing.cutContraction, 3999ms);
    EXPECT_EQ(timing.totalOnTime, 221 * 4s + 3999ms);
}

// By hand: included 75 cycles of 16 s; added 66 cycles of 18 s and 12 s left, 12 ≥ 6.
TEST(SessionTiming, RampsAddedToTheOnTimeMakeFewerAndLongerContractions)
{
    Settings settings = someSettings();
    settings.rampUp = 1s;
    settings.rampDown = 1s;

    const SessionTiming included = timingOf(settings, RampHabit::includedInOnTime);
    EXPECT_EQ(included.onPhase, 4s);
    EXPECT_EQ(included.plateau, 2s);
    EXPECT_EQ(included.cycle, 16s);
    EXPECT_EQ(included.contractionsCompleted, 75);
    EXPECT_EQ(included.totalOnTime, 300s);
    EXPECT_DOUBLE_EQ(included.dutyCycle(), 0.25);
    EXPECT_DOUBLE_EQ(included.offOnRatio(), 3.0);

    const SessionTiming added = timingOf(settings, RampHabit::addedToOnTime);
    EXPECT_EQ(added.onPhase, 6s);
    EXPECT_EQ(added.plateau, 4s);
    EXPECT_EQ(added.cycle, 18s);
    EXPECT_EQ(added.contractionsCompleted, 67);
    EXPECT_EQ(added.totalOnTime, 402s);
    EXPECT_DOUBLE_EQ(added.dutyCycle(), 1.0 / 3.0);
    EXPECT_DOUBLE_EQ(added.offOnRatio(), 2.0);
}

// By hand: 37 cycles are 592 s, 2.5 s are left; 37 × 200 + 125 pulses.
TEST(SessionTiming, ACutContractionCountsWithItsTimeAndItsPulses)
{
    Settings settings = someSettings();
    settings.sessionLength = 594'500ms;
    const SessionTiming timing = timingOf(settings, RampHabit::includedInOnTime);
    EXPECT_EQ(timing.contractionsStarted, 38);
    EXPECT_EQ(timing.contractionsCompleted, 37);
    EXPECT_EQ(timing.cutContraction, 2500ms);
    EXPECT_EQ(timing.totalOnTime, 150'500ms);
    EXPECT_EQ(timing.pulses, 7525);
}

// By hand: pulses at k / 33 s strictly before 2.5 s are k = 0 … 82 (82 / 33 = 2.4848 s, 83 / 33 =
// 2.5152 s); at 50 Hz the pulse at exactly 4 s belongs to no contraction.
TEST(PulsesIn, CountsPulsesStrictlyBeforeTheEndOfTheOnPhase)
{
    EXPECT_EQ(pulsesIn(2500ms, 33_Hz), 83);
    EXPECT_EQ(pulsesIn(4s, 50_Hz), 200);
    EXPECT_EQ(pulsesIn(4001ms, 50_Hz), 201);
    EXPECT_EQ(pulsesIn(1ms, 1_Hz), 1);
    EXPECT_EQ(pulsesIn(0ms, 50_Hz), 0);
    EXPECT_EQ(pulsesIn(3s, 2500_mHz), 8); // at 0, 0.4 … 2.8 s
}

// Ten contractions of 10 s on, 50 s off take 600 s with the last rest and 550 s without (case P18
// of the reference table).
TEST(SessionLengthFor, LeavesTheLastOffTimeAway)
{
    Settings settings = someSettings();
    settings.onTime = 10s;
    settings.offTime = 50s;
    settings.sessionLength = 10min;
    const SessionTiming timing = timingOf(settings, RampHabit::includedInOnTime);
    EXPECT_EQ(timing.contractionsCompleted, 10);
    EXPECT_EQ(sessionLengthFor(10, timing), 550s);
    EXPECT_EQ(sessionLengthFor(1, timing), 10s);
}

// By hand, 10 s on and 50 s off. 10 min: off 50 s, then 550 s = 9 cycles and 10 s, in which a tenth
// on phase just ends. One second less cuts it; a unit that begins with an on phase completes ten
// either way.
TEST(SessionTiming, AUnitThatBeginsWithAnOffTimeContractsOneOffTimeLater)
{
    Settings settings = someSettings();
    settings.onTime = 10s;
    settings.offTime = 50s;
    settings.sessionLength = 10min;
    const auto timing = [&](CycleStart start) {
        return *sessionTiming(settings, RampHabit::includedInOnTime, start);
    };
    EXPECT_EQ(timing(CycleStart::withOff).lead, 50s);
    EXPECT_EQ(timing(CycleStart::withOff).contractionsCompleted, 10);
    EXPECT_EQ(timing(CycleStart::withOff).totalOnTime, 100s);
    EXPECT_EQ(sessionLengthFor(10, timing(CycleStart::withOff)), 10min);
    settings.sessionLength = 10min - 1s;
    EXPECT_EQ(timing(CycleStart::withOff).contractionsCompleted, 9);
    EXPECT_EQ(timing(CycleStart::withOff).cutContraction, 9s);
    EXPECT_EQ(timing(CycleStart::withOff).totalOnTime, 99s);
    EXPECT_EQ(timing(CycleStart::withOn).contractionsCompleted, 10);
    EXPECT_EQ(timing(CycleStart::withOn).lead, 0s);
    settings.sessionLength = 59s; // the first on phase would end after 60 s
    EXPECT_FALSE(sessionTiming(settings, RampHabit::includedInOnTime, CycleStart::withOff));
    settings.sessionLength = 60s;
    EXPECT_EQ(timing(CycleStart::withOff).contractionsCompleted, 1);
}

TEST(SessionTiming, NamesTheSettingThatForbidsIt)
{
    Settings settings = someSettings();
    settings.rampUp = 3s;
    settings.rampDown = 2s;
    const Result<SessionTiming> ramps = sessionTiming(settings, RampHabit::includedInOnTime);
    ASSERT_FALSE(ramps);
    EXPECT_EQ(ramps.error().code, ErrorCode::impossible);
    EXPECT_EQ(ramps.error().field, Field::rampUp);
    const std::vector<Amount> figures{{5.0, Unit::second}, {4.0, Unit::second}};
    EXPECT_EQ(ramps.error().figures, figures);
    EXPECT_TRUE(sessionTiming(settings, RampHabit::addedToOnTime));

    settings = someSettings();
    settings.onTime = 0s;
    const Result<SessionTiming> outside = sessionTiming(settings, RampHabit::includedInOnTime);
    ASSERT_FALSE(outside);
    EXPECT_EQ(outside.error().code, ErrorCode::outOfRange);
    EXPECT_EQ(outside.error().field, Field::onTime);

    settings = someSettings();
    settings.waveform = Waveform::asymmetricBalancedBiphasic;
    const Result<SessionTiming> missing = sessionTiming(settings, RampHabit::includedInOnTime);
    ASSERT_FALSE(missing);
    EXPECT_EQ(missing.error().code, ErrorCode::notFilled);
    EXPECT_EQ(missing.error().field, Field::secondPhaseDuration);
}
