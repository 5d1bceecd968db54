// SPDX-License-Identifier: GPL-3.0-or-later
// The force–fatigue model against the same equations integrated with Boost.odeint at tight
// tolerance, on random settings: ramps, both ramp habits, rests so short that force is left,
// sessions that end anywhere. The seed is fixed and printed when a test fails.
#include "tests/core/examples.h"
#include "tests/support/odeint_session.h"

#include "core/fatigue_prediction.h"

#include <gtest/gtest.h>
#include <random>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

constexpr std::uint64_t seed = 20260311;
constexpr double tolerance = 1e-6;

OdeintSession sessionOf(const Settings& settings, RampHabit habit)
{
    const auto timing = sessionTiming(settings, habit);
    OdeintSession session;
    session.frequencyHertz = settings.pulseFrequency.shown();
    session.onPhase = static_cast<double>(timing->onPhase.count());
    session.offTime = static_cast<double>(timing->offTime.count());
    session.rampUp = static_cast<double>(timing->rampUp.count());
    session.rampDown = static_cast<double>(timing->rampDown.count());
    session.session = static_cast<double>(timing->session.count());
    return session;
}

void expectRelative(double computed, double expected, const char* what)
{
    EXPECT_NEAR(computed, expected, tolerance * std::abs(expected)) << what;
}

void expectSameAsOdeint(const Settings& settings, RampHabit habit, double odeintTolerance = 1e-11)
{
    const OdeintResult reference = OdeintMuscle(odeintTolerance).run(sessionOf(settings, habit));
    const auto predicted = predictFatigue(settings, habit);
    ASSERT_TRUE(predicted);
    expectRelative(predicted->atEnd.forceScale, reference.forceScale, "A at the end");
    ASSERT_EQ(predicted->first.has_value(), !reference.contractions.empty());
    if (!predicted->first) {
        return;
    }
    const OdeintContraction& first = reference.contractions.front();
    const OdeintContraction& last = reference.contractions.back();
    expectRelative(predicted->first->peakNewtons, first.peak, "first peak");
    expectRelative(predicted->first->integralNewtonSeconds, first.integral, "first integral");
    ASSERT_EQ(predicted->lastToFirst.has_value(), first.peak > 0.0);
    if (!predicted->lastToFirst) {
        return; // one pulse at the foot of a ramp recruits nothing
    }
    expectRelative(predicted->lastToFirst->peak, last.peak / first.peak, "peak ratio");
    expectRelative(predicted->lastToFirst->forceTimeIntegral, last.integral / first.integral,
                   "ratio of integrals");
}

class RandomSessions
{
public:
    double uniform(double least, double most)
    {
        return std::uniform_real_distribution<double>(least, most)(m_source);
    }
    Milliseconds time(double least, double most)
    {
        return Milliseconds(
            static_cast<std::int64_t>(std::exp(uniform(std::log(least), std::log(most)))));
    }
    Settings next(double shortestOff, double longestOff)
    {
        Settings settings = someSettings();
        settings.phaseDuration = 100_us;
        settings.pulseFrequency = PulseFrequency::fromCount(
            static_cast<std::int64_t>(std::exp(uniform(std::log(1e3), std::log(150e3)))));
        settings.onTime = time(300, 12'000);
        settings.offTime = time(shortestOff, longestOff);
        if (uniform(0, 1) < 0.5) {
            settings.rampUp = Milliseconds(static_cast<std::int64_t>(
                uniform(0, 0.5) * static_cast<double>(settings.onTime.count())));
            settings.rampDown = Milliseconds(static_cast<std::int64_t>(
                uniform(0, 0.5) * static_cast<double>(settings.onTime.count())));
        }
        const Milliseconds cycle =
            settings.onTime + settings.rampUp + settings.rampDown + settings.offTime;
        settings.sessionLength = Milliseconds(
            static_cast<std::int64_t>(uniform(1.2, 14.0) * static_cast<double>(cycle.count())));
        return settings;
    }
    RampHabit habit()
    {
        return uniform(0, 1) < 0.5 ? RampHabit::includedInOnTime : RampHabit::addedToOnTime;
    }

private:
    std::mt19937_64 m_source{seed};
};

void expectSameOnRandomSessions(double shortestOff, double longestOff, int rounds)
{
    RandomSessions random;
    for (int round = 0; round < rounds; ++round) {
        const Settings settings = random.next(shortestOff, longestOff);
        const RampHabit habit = random.habit();
        SCOPED_TRACE(testing::Message()
                     << "seed " << seed << ", round " << round << ": "
                     << settings.pulseFrequency.shown() << " Hz, on " << settings.onTime.count()
                     << ", off " << settings.offTime.count() << ", up " << settings.rampUp.count()
                     << ", down " << settings.rampDown.count() << ", session "
                     << settings.sessionLength.count() << ", ramps "
                     << (habit == RampHabit::includedInOnTime ? "included" : "added"));
        expectSameAsOdeint(settings, habit);
        if (testing::Test::HasFailure()) {
            return;
        }
    }
}

} // namespace

TEST(FatigueAgainstOdeint, AgreesWhereTheMuscleRelaxesBetweenContractions)
{
    expectSameOnRandomSessions(3'000, 40'000, 30);
}

TEST(FatigueAgainstOdeint, AgreesWhereForceIsLeftFromOneContractionToTheNext)
{
    expectSameOnRandomSessions(20, 1'500, 30);
}

TEST(FatigueAgainstOdeint, AgreesOverFourHoursInWhichCyclesSettle)
{
    Settings settings = someSettings();
    settings.pulseFrequency = 5_Hz;
    settings.onTime = 6s;
    settings.offTime = 2s; // force is left, so each cycle is integrated until they repeat
    settings.sessionLength = 4h;
    expectSameAsOdeint(settings, RampHabit::includedInOnTime, 1e-8);
}

TEST(FatigueAgainstOdeint, AgreesAtBothEndsOfTheFrequencies)
{
    for (const PulseFrequency frequency : {1_Hz, 150_Hz}) {
        Settings settings = someSettings();
        settings.pulseFrequency = frequency;
        settings.phaseDuration = 100_us;
        settings.sessionLength = 2min;
        SCOPED_TRACE(frequency.shown());
        expectSameAsOdeint(settings, RampHabit::includedInOnTime);
    }
}
