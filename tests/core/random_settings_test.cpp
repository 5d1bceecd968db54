// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for any settings: over random ones (the seed is fixed and printed when a test
// fails) and over the extremes of every field.
#include "tests/core/examples.h"

#include "core/dose.h"
#include "core/plan_figures.h"
#include "core/session_timing.h"
#include "core/settings.h"

#include <array>
#include <gtest/gtest.h>
#include <limits>
#include <random>
#include <vector>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

constexpr std::uint64_t seed = 20260309;
constexpr int rounds = 2000;

/// Settings that can run, so that each property is checked on figures.
class RandomSettings
{
public:
    Settings next()
    {
        Settings settings = someSettings();
        settings.pulseFrequency = PulseFrequency::fromCount(between(100, 150'000));
        settings.phaseDuration = PhaseDuration::fromCount(between(50, 1000));
        settings.onTime = Milliseconds(between(1, 30'000));
        settings.offTime = Milliseconds(between(1, 120'000));
        settings.rampUp = Milliseconds(between(0, settings.onTime.count() / 2));
        settings.rampDown = Milliseconds(between(0, settings.onTime.count() / 2));
        settings.sessionLength = Milliseconds(between(120'000, 4 * 3'600'000));
        return settings;
    }
    RampHabit habit()
    {
        return between(0, 1) == 0 ? RampHabit::includedInOnTime : RampHabit::addedToOnTime;
    }
    std::int64_t between(std::int64_t least, std::int64_t most)
    {
        return std::uniform_int_distribution<std::int64_t>(least, most)(m_source);
    }

private:
    std::mt19937_64 m_source{seed};
};

template <class Property>
void forRandomSessions(Property property)
{
    RandomSettings random;
    for (int round = 0; round < rounds; ++round) {
        const Settings settings = random.next();
        const RampHabit habit = random.habit();
        const Result<SessionTiming> timing = sessionTiming(settings, habit);
        SCOPED_TRACE(testing::Message() << "seed " << seed << ", round " << round);
        ASSERT_TRUE(timing);
        property(settings, habit, *timing);
        if (testing::Test::HasFailure()) {
            return;
        }
    }
}

/// Values at which arithmetic breaks, and those around a field's own bounds.
std::vector<std::int64_t> extremesOf(Field field)
{
    constexpr std::int64_t least = std::numeric_limits<std::int64_t>::min();
    constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
    const CountRange bounds = arithmeticBounds(field);
    return {least,       least + 1,       -1,       0,   1, bounds.least, bounds.least - 1,
            bounds.most, bounds.most + 1, most - 1, most};
}

constexpr std::array waveforms{Waveform::symmetricBiphasic, Waveform::asymmetricBalancedBiphasic,
                               Waveform::kilohertzBursts, Waveform::unbalancedPulses,
                               Waveform::directCurrent};
constexpr std::array habits{RampHabit::includedInOnTime, RampHabit::addedToOnTime};

/// Either a stop, or figures that make sense.
void expectFindingsOrFigures(const Settings& settings, RampHabit habit)
{
    const std::vector<Finding> findings = settingsFindings(settings, habit);
    const Result<SessionTiming> timing = sessionTiming(settings, habit);
    ASSERT_EQ(hasStop(findings), !timing.has_value());
    if (!timing) {
        return;
    }
    EXPECT_GT(timing->contractionsStarted, 0);
    EXPECT_GE(timing->plateau, 0ms);
    EXPECT_GT(timing->totalOnTime, 0ms);
    EXPECT_LE(timing->totalOnTime, timing->session);
    EXPECT_GT(timing->pulses, 0);
    const Dose dose = doseOf(settings, 1000_mA, PadArea(25.0), *timing);
    EXPECT_GE(dose.rmsTrain.shown(), 0.0);
    EXPECT_LE(dose.rmsTrain.shown(), 1000.0 * 1.0001); // never above the peak
}

/// Every pair of fields at every pair of extremes.
template <class Check>
void forExtremes(const Settings& start, Check check)
{
    const std::vector<Field>& fields = standardAskingOrder();
    for (const Field first : fields) {
        for (const Field second : fields) {
            for (const std::int64_t one : extremesOf(first)) {
                for (const std::int64_t other : extremesOf(second)) {
                    Settings settings = start;
                    setCount(settings, first, one);
                    setCount(settings, second, other);
                    check(settings);
                    if (testing::Test::HasFailure()) {
                        return;
                    }
                }
            }
        }
    }
}

} // namespace

TEST(AnySession, IsOnForNoLongerThanItLasts)
{
    forRandomSessions([](const Settings&, RampHabit, const SessionTiming& timing) {
        EXPECT_LE(timing.totalOnTime, timing.session);
        EXPECT_GT(timing.totalOnTime, 0ms);
    });
}

TEST(AnySession, IsTheSumOfItsParts)
{
    forRandomSessions([](const Settings&, RampHabit, const SessionTiming& timing) {
        EXPECT_EQ(timing.rampUp + timing.plateau + timing.rampDown, timing.onPhase);
        EXPECT_EQ(timing.onPhase + timing.offTime, timing.cycle);
        EXPECT_EQ(timing.cyclesComplete * timing.cycle + timing.remainder, timing.session);
        EXPECT_EQ(timing.contractionsCompleted * timing.onPhase + timing.cutContraction,
                  timing.totalOnTime);
        const std::int64_t cut = timing.contractionsStarted - timing.contractionsCompleted;
        EXPECT_EQ(cut, timing.cutContraction > 0ms ? 1 : 0);
        EXPECT_LT(timing.cutContraction, timing.onPhase);
    });
}

/// Counted by walking through the session, contraction by contraction.
TEST(AnySession, HasTheContractionsThatAWalkThroughItMeets)
{
    forRandomSessions([](const Settings&, RampHabit, const SessionTiming& timing) {
        std::int64_t started = 0;
        std::int64_t completed = 0;
        Milliseconds on{};
        for (Milliseconds begin{}; begin < timing.session;
             begin += timing.onPhase + timing.offTime) {
            const Milliseconds end = begin + timing.onPhase;
            ++started;
            completed += end <= timing.session ? 1 : 0;
            on += std::min(end, timing.session) - begin;
        }
        EXPECT_EQ(timing.contractionsStarted, started);
        EXPECT_EQ(timing.contractionsCompleted, completed);
        EXPECT_EQ(timing.totalOnTime, on);
    });
}

TEST(AnySession, HasThePulsesThatAWalkThroughAContractionMeets)
{
    forRandomSessions([](const Settings& settings, RampHabit, const SessionTiming& timing) {
        // Pulse k comes at k / frequency: k × 1e6 ms·mHz / mHz.
        std::int64_t pulses = 0;
        while (pulses * 1'000'000 < timing.onPhase.count() * settings.pulseFrequency.count()) {
            ++pulses;
        }
        EXPECT_EQ(timing.pulsesPerContraction, pulses);
        EXPECT_LE(timing.pulses, timing.contractionsStarted * pulses);
        EXPECT_GE(timing.pulses, timing.contractionsCompleted * pulses);
    });
}

TEST(AnySession, MoreOffTimeNeverMakesMoreContractions)
{
    RandomSettings random;
    for (int round = 0; round < rounds; ++round) {
        SCOPED_TRACE(testing::Message() << "seed " << seed << ", round " << round);
        Settings settings = random.next();
        const RampHabit habit = random.habit();
        const Result<SessionTiming> before = sessionTiming(settings, habit);
        settings.offTime += Milliseconds(random.between(1, 60'000));
        const Result<SessionTiming> after = sessionTiming(settings, habit);
        ASSERT_TRUE(before);
        ASSERT_TRUE(after);
        ASSERT_LE(after->contractionsStarted, before->contractionsStarted);
        ASSERT_LE(after->contractionsCompleted, before->contractionsCompleted);
        ASSERT_LE(after->totalOnTime, before->totalOnTime);
    }
}

TEST(AnySession, PlannedByContractionsCompletesThatManyAndNoMillisecondIsSpare)
{
    RandomSettings random;
    for (int round = 0; round < rounds; ++round) {
        SCOPED_TRACE(testing::Message() << "seed " << seed << ", round " << round);
        Settings settings = random.next();
        const RampHabit habit = random.habit();
        const std::int64_t contractions = random.between(1, 60);
        const Result<SessionTiming> any = sessionTiming(settings, habit);
        ASSERT_TRUE(any);
        settings.sessionLength = sessionLengthFor(contractions, *any);
        const Result<SessionTiming> planned = sessionTiming(settings, habit);
        ASSERT_TRUE(planned);
        ASSERT_EQ(planned->contractionsCompleted, contractions);
        ASSERT_EQ(planned->contractionsStarted, contractions);
        settings.sessionLength -= 1ms;
        if (const Result<SessionTiming> shorter = sessionTiming(settings, habit)) {
            ASSERT_EQ(shorter->contractionsCompleted, contractions - 1);
        } else {
            ASSERT_EQ(contractions, 1);
        }
    }
}

TEST(AnyIntegers, GiveAFindingOrFigures)
{
    for (const Waveform waveform : waveforms) {
        for (const RampHabit habit : habits) {
            Settings start = someSettings();
            start.waveform = waveform;
            start.secondPhaseDuration = 600_us;
            start.carrierFrequency = 2500_Hz_carrier;
            start.burstDuty = 50_percent_burst;
            forExtremes(
                start, [&](const Settings& settings) { expectFindingsOrFigures(settings, habit); });
        }
    }
}

TEST(AnyIntegers, InEveryFieldAtOnceGiveAFinding)
{
    for (const std::int64_t value : extremesOf(Field::none)) {
        for (const Waveform waveform : waveforms) {
            Settings settings;
            settings.waveform = waveform;
            for (const Field field : standardAskingOrder()) {
                setCount(settings, field, value);
            }
            for (const RampHabit habit : habits) {
                expectFindingsOrFigures(settings, habit);
            }
        }
    }
}

TEST(AnyIntegers, OnAUnitOfAnyRangesGiveFindings)
{
    for (const Field field : standardAskingOrder()) {
        for (const std::int64_t least : extremesOf(field)) {
            for (const std::int64_t most : extremesOf(field)) {
                Stimulator unit = someStimulator();
                setRange(unit, field, CountRange{least, most, most, least});
                const bool inOrder = least <= most && most > 0;
                const CountRange bounds = arithmeticBounds(field);
                const bool possible = inOrder && bounds.contains(least) && bounds.contains(most);
                EXPECT_EQ(checkStimulator(unit).empty(), possible);
                for (const std::int64_t value : extremesOf(field)) {
                    Block block = someBlock();
                    setCount(block.sites.front().settings, field, value);
                    const BlockFigures figures = blockFigures(block, unit);
                    EXPECT_EQ(figures.sites.size(), 1U);
                }
            }
        }
    }
}

TEST(AnyIntegers, InABlockGiveFindings)
{
    constexpr int least = std::numeric_limits<int>::min();
    constexpr int most = std::numeric_limits<int>::max();
    for (const int value : {least, -1, 0, 100, most}) {
        for (const int other : {least, -1, 0, 100, most}) {
            Block block = someBlock();
            block.weeks = value;
            block.schedule = DaysPerWeek{other};
            block.sessionsPerDay = value;
            block.sites.front().channel = other;
            const BlockFigures figures = blockFigures(block, someStimulator());
            EXPECT_TRUE(figures.hasStop());
            EXPECT_EQ(figures.weekOnTime, std::nullopt);
        }
    }
}
