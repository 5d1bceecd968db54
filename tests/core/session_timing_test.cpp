// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session_timing.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace std::chrono_literals;

namespace
{

Settings fourOnTwelveOff(Milliseconds session)
{
    Settings settings;
    settings.pulseFrequency = 50_Hz;
    settings.phaseDuration = 300_us;
    settings.onTime = 4s;
    settings.offTime = 12s;
    settings.sessionLength = session;
    return settings;
}

} // namespace

// Common practice, no source: 4 s on, 12 s off, 59 min. 221 cycles of 16 s are 3536 s; the
// remaining 4 s are one whole on phase.
TEST(SessionTiming, ASessionThatEndsExactlyWithAnOnPhaseHasCompletedThatContraction)
{
    const auto timing = sessionTiming(fourOnTwelveOff(59min), RampHabit::includedInOnTime);
    ASSERT_TRUE(timing);
    EXPECT_EQ(timing->contractionsCompleted, 222);
    EXPECT_EQ(timing->contractionsStarted, 222);
    EXPECT_EQ(timing->cutContraction, 0ms);
}
