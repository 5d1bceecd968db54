// SPDX-License-Identifier: GPL-3.0-or-later
// Searches are checked against counting by hand and against trying every step of the unit.
#include "tests/core/examples.h"

#include "core/settings_search.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

/// Off time 1 … 60 s in steps of 1 s, timer 1 … 60 min in steps of 1 min.
Stimulator unitWithSteps()
{
    Stimulator unit = someStimulator();
    unit.offTime = {1s, 60s, 1s, 12s};
    unit.sessionLength = {1min, 60min, 1min, 20min};
    return unit;
}

const SearchFound& found(const Result<SearchAnswer>& answer)
{
    return std::get<SearchFound>(*answer);
}

NoSetting reason(const Result<SearchAnswer>& answer)
{
    return std::get<SearchRefusal>(*answer).reason;
}

} // namespace

TEST(SessionForContractions, IsTheShortestOnTheTimerThatCompletesThem)
{
    // 4/12 s: 75 contractions take 74 × 16 + 4 = 1188 s; the timer's next minute is 20 min, in
    // which no other begins (the 76th would at 1200 s).
    const auto answer = sessionForContractions(someSettings(), unitWithSteps(), 75);
    ASSERT_TRUE(answer);
    EXPECT_EQ(found(answer).settings.sessionLength, 20min);
    EXPECT_EQ(found(answer).timing.contractionsStarted, 75);
}

TEST(SessionForContractions, MayCutAnotherWhereTheTimersStepsAllowNoBetter)
{
    // 10 contractions take 9 × 16 + 4 = 148 s; 3 min is 180 s, in which two more are done.
    const auto answer = sessionForContractions(someSettings(), unitWithSteps(), 10);
    ASSERT_TRUE(answer);
    EXPECT_EQ(found(answer).settings.sessionLength, 3min);
    EXPECT_GE(found(answer).timing.contractionsCompleted, 10);
}

TEST(SessionForContractions, SaysWhereTheTimerEnds)
{
    const auto answer = sessionForContractions(someSettings(), unitWithSteps(), 300); // 79.7 min
    ASSERT_TRUE(answer);
    EXPECT_EQ(reason(answer), NoSetting::sessionTimerEnds);
    EXPECT_EQ(std::get<SearchRefusal>(*answer).limit, (Amount{60.0, Unit::minute}));
    EXPECT_EQ(reason(sessionForContractions(someSettings(), unitWithSteps(), 0)),
              NoSetting::noContractions);
    EXPECT_EQ(reason(sessionForContractions(someSettings(), unitWithSteps(),
                                            std::numeric_limits<std::int64_t>::max())),
              NoSetting::sessionTimerEnds);
}

TEST(LongestOffTime, FillsTheSessionWithTheSameContractions)
{
    // 15 contractions of 10 s in at most 15 min: 14 rests in 750 s, so 53 s (742 s, 892 s in all);
    // with 53 s the timer's 15 min ends before the 16th begins at 945 s.
    Settings settings = someSettings();
    settings.onTime = 10s;
    settings.offTime = 30s;
    settings.sessionLength = 10min;
    const auto answer = longestOffTime(settings, unitWithSteps(), KeptDose::contractions, 15min);
    ASSERT_TRUE(answer);
    EXPECT_EQ(found(answer).settings.offTime, 53s);
    EXPECT_EQ(found(answer).settings.sessionLength, 15min);
    EXPECT_EQ(found(answer).timing.contractionsStarted, 15);
}

TEST(LongestOffTime, KeepsTheTotalOnTimeWithItsCutContraction)
{
    Settings settings = someSettings();
    settings.onTime = 10s;
    settings.offTime = 30s;
    settings.sessionLength = 365s; // nine whole ones and 5 s of the tenth
    const auto before = sessionTiming(settings, RampHabit::includedInOnTime);
    ASSERT_EQ(before->cutContraction, 5s);
    Stimulator unit = unitWithSteps();
    unit.sessionLength.step = 5s;
    const auto answer = longestOffTime(settings, unit, KeptDose::totalOnTime, 8min);
    ASSERT_TRUE(answer);
    EXPECT_EQ(found(answer).timing.totalOnTime, before->totalOnTime);
    EXPECT_GT(found(answer).settings.offTime, 30s);
    EXPECT_LE(found(answer).settings.sessionLength, 8min);
}

TEST(LongestOffTime, AgreesWithTryingEverySetting)
{
    const Stimulator unit = unitWithSteps();
    Settings settings = someSettings();
    settings.sessionLength = 9min;
    const auto wanted = sessionTiming(settings, unit.rampHabit)->contractionsCompleted;
    int settingsFound = 0;
    for (const Milliseconds longest : {7min, 9min, 14min, 33min}) {
        std::optional<Milliseconds> best;
        for (Milliseconds off = 1s; off <= 60s; off += 1s) {
            for (Milliseconds length = 1min; length <= longest; length += 1min) {
                Settings trial = settings;
                trial.offTime = off;
                trial.sessionLength = length;
                const auto timing = sessionTiming(trial, unit.rampHabit);
                if (timing && timing->contractionsStarted == wanted &&
                    timing->contractionsCompleted == wanted) {
                    best = off;
                }
            }
        }
        const auto answer = longestOffTime(settings, unit, KeptDose::contractions, longest);
        ASSERT_TRUE(answer);
        SCOPED_TRACE(longest.count());
        if (!best) {
            EXPECT_EQ(reason(answer), NoSetting::betweenTimerSteps);
            continue;
        }
        EXPECT_EQ(found(answer).settings.offTime, *best);
        ++settingsFound;
    }
    EXPECT_GE(settingsFound, 2);
}

TEST(LongestOffTime, SaysHowLongASessionTheShortestRestNeeds)
{
    const auto answer =
        longestOffTime(someSettings(), unitWithSteps(), KeptDose::contractions, 5min);
    ASSERT_TRUE(answer);
    EXPECT_EQ(reason(answer), NoSetting::sessionTooShort);
    // 75 × 4 + 74 × 1 = 374 s
    EXPECT_NEAR(std::get<SearchRefusal>(*answer).limit.value, 374.0 / 60.0, 1e-12);
}

TEST(SmallestOffTime, AgreesWithTryingEveryOffTime)
{
    const Stimulator unit = unitWithSteps();
    for (const double ratio : {0.45, 0.6, 0.75}) {
        FatigueMemory memory;
        std::optional<Milliseconds> best;
        for (Milliseconds off = 60s; off >= 1s; off -= 1s) {
            Settings trial = someSettings();
            trial.offTime = off;
            const auto prediction = memory.predict(trial, unit.rampHabit);
            if (prediction->lastToFirst->forceTimeIntegral < ratio) {
                break;
            }
            best = off;
        }
        const auto answer =
            smallestOffTime(someSettings(), unit, ratio, KeptLength::session, memory);
        ASSERT_TRUE(answer);
        ASSERT_TRUE(best);
        EXPECT_EQ(found(answer).settings.offTime, *best) << ratio;
        EXPECT_EQ(found(answer).settings.sessionLength, 20min);
    }
}

TEST(SmallestOffTime, KeepsTheContractionsByLengtheningTheSession)
{
    FatigueMemory memory;
    const auto answer =
        smallestOffTime(someSettings(), unitWithSteps(), 0.65, KeptLength::contractions, memory);
    ASSERT_TRUE(answer);
    EXPECT_GE(found(answer).timing.contractionsCompleted, 75);
    EXPECT_GT(found(answer).settings.sessionLength, 20min);
    const auto prediction = memory.predict(found(answer).settings, RampHabit::includedInOnTime);
    EXPECT_GE(prediction->lastToFirst->forceTimeIntegral, 0.65);
    Settings shorter = found(answer).settings;
    shorter.offTime -= 1s;
    const auto fits = sessionForContractions(shorter, unitWithSteps(), 75);
    EXPECT_LT(memory.predict(found(fits).settings, RampHabit::includedInOnTime)
                  ->lastToFirst->forceTimeIntegral,
              0.65);
}

TEST(SmallestOffTime, DoesNotCallASessionOfOneContractionRested)
{
    Stimulator unit = unitWithSteps();
    unit.offTime = {1s, 600s, 1s, 12s};
    Settings settings = someSettings();
    settings.sessionLength = 5min;
    FatigueMemory memory;
    const auto answer = smallestOffTime(settings, unit, 1.2, KeptLength::session, memory);
    EXPECT_EQ(reason(answer), NoSetting::ratioNotReached);
    EXPECT_NE(std::get<SearchRefusal>(*answer).limit.value, 1.0); // one against itself
}

TEST(SmallestOffTime, SaysThatNothingIsRecruited)
{
    Settings settings = someSettings();
    settings.phaseDuration = 100_us;
    FatigueOptions options;
    options.phaseDurationRecruits = true;
    FatigueMemory memory;
    EXPECT_EQ(reason(smallestOffTime(settings, unitWithSteps(), 0.5, KeptLength::session, memory,
                                     options)),
              NoSetting::noForce);
}

TEST(SmallestOffTime, SaysWhatTheLongestRestKeepsWhereItIsNotEnough)
{
    FatigueMemory memory;
    const auto answer =
        smallestOffTime(someSettings(), unitWithSteps(), 0.999, KeptLength::session, memory);
    ASSERT_TRUE(answer);
    EXPECT_EQ(reason(answer), NoSetting::ratioNotReached);
    EXPECT_GT(std::get<SearchRefusal>(*answer).limit.value, 0.8);
    EXPECT_LT(std::get<SearchRefusal>(*answer).limit.value, 0.999);
}

TEST(SmallestOffTime, OfAUnitWithOneOffTimeSaysSo)
{
    Stimulator unit = unitWithSteps();
    unit.offTime = {12s, 12s, 1s, 12s};
    FatigueMemory memory;
    EXPECT_EQ(reason(smallestOffTime(someSettings(), unit, 0.9, KeptLength::session, memory)),
              NoSetting::offTimeIsFixed);
    EXPECT_EQ(
        found(smallestOffTime(someSettings(), unit, 0.5, KeptLength::session, memory)).settings,
        someSettings());
}

TEST(SmallestOffTime, RefusesARatioThatIsNone)
{
    FatigueMemory memory;
    for (const double ratio : {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(),
                               std::numeric_limits<double>::infinity()}) {
        EXPECT_FALSE(
            smallestOffTime(someSettings(), unitWithSteps(), ratio, KeptLength::session, memory));
    }
}
