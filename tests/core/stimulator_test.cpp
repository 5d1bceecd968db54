// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"

#include "core/settings.h"
#include "core/stimulator.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <limits>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

std::vector<FindingCode> checkCodes(const Stimulator& stimulator)
{
    return codesOf(checkStimulator(stimulator));
}

} // namespace

TEST(CountRange, KnowsItsStepsCountedFromTheLeast)
{
    const CountRange range{50, 400, 100, 50}; // 50, 150, 250, 350 and 400, which can be reached
    EXPECT_TRUE(range.isOnStep(50));
    EXPECT_TRUE(range.isOnStep(350));
    EXPECT_TRUE(range.isOnStep(400));
    EXPECT_FALSE(range.isOnStep(100));
    EXPECT_FALSE(range.isOnStep(399));
}

TEST(CountRange, GoesToTheNearestStepAndHalvesGoDown)
{
    const CountRange range{50, 400, 100, 50};
    EXPECT_EQ(range.nearestStep(50), 50);
    EXPECT_EQ(range.nearestStep(99), 50);
    EXPECT_EQ(range.nearestStep(100), 50);
    EXPECT_EQ(range.nearestStep(101), 150);
    EXPECT_EQ(range.nearestStep(374), 350);
    EXPECT_EQ(range.nearestStep(375), 350);
    EXPECT_EQ(range.nearestStep(376), 400);
    EXPECT_EQ(range.nearestStep(-7), 50);
    EXPECT_EQ(range.nearestStep(5000), 400);
}

TEST(CountRange, AFixedSettingHasOneValue)
{
    const CountRange fixed{250, 250, 1, 250};
    EXPECT_TRUE(fixed.isFixed());
    EXPECT_EQ(fixed.nearestStep(300), 250);
    EXPECT_TRUE(fixed.contains(250));
    EXPECT_FALSE(fixed.contains(251));
}

TEST(CountRange, HoldsAnyIntegers)
{
    constexpr std::int64_t least = std::numeric_limits<std::int64_t>::min();
    constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
    const CountRange widest{least, most, 10, 0};
    EXPECT_TRUE(widest.isOnStep(least));
    EXPECT_TRUE(widest.isOnStep(least + 10));
    EXPECT_FALSE(widest.isOnStep(least + 11));
    EXPECT_EQ(widest.nearestStep(least + 14), least + 10);
    EXPECT_EQ(widest.nearestStep(least + 16), least + 20);
    EXPECT_EQ(widest.nearestStep(most - 1), most);
    const CountRange hugeStep{0, 10, most, 0};
    EXPECT_EQ(hugeStep.nearestStep(4), 0);
    EXPECT_EQ(hugeStep.nearestStep(6), 10);
}

TEST(Stimulator, EachRangeComesBackAsItWasSet)
{
    for (const Field field : standardAskingOrder()) {
        Stimulator unit = someStimulator();
        const CountRange range{10, 1000, 5, 100};
        setRange(unit, field, range);
        EXPECT_EQ(rangeOf(unit, field), range) << static_cast<int>(field);
    }
    EXPECT_EQ(rangeOf(someStimulator(), Field::muscle), std::nullopt);
}

TEST(Stimulator, BothAmplitudeFieldsShareARange)
{
    Stimulator unit = someStimulator();
    setRange(unit, Field::amplitudeCeiling, CountRange{0, 80'000, 500, 0});
    EXPECT_EQ(rangeOf(unit, Field::lastToleratedAmplitude), rangeOf(unit, Field::amplitudeCeiling));
}

TEST(Stimulator, OnlyOptionalSettingsCanBeTakenAway)
{
    Stimulator unit = someStimulator();
    for (const Field field : standardAskingOrder()) {
        setRange(unit, field, CountRange{10, 1000, 5, 100});
    }
    for (const Field field : standardAskingOrder()) {
        setRange(unit, field, std::nullopt);
    }
    for (const Field gone : {Field::interphaseGap, Field::secondPhaseDuration,
                             Field::carrierFrequency, Field::burstDuty}) {
        EXPECT_EQ(rangeOf(unit, gone), std::nullopt);
    }
    EXPECT_TRUE(rangeOf(unit, Field::onTime));
}

TEST(AskingOrder, IsTheUnitsOwnThenTheRest)
{
    Stimulator unit = someStimulator();
    unit.askingOrder = {Field::sessionLength, Field::onTime, Field::onTime, Field::burstDuty};
    const std::vector<Field> order = askingOrderOf(unit);
    ASSERT_GE(order.size(), 3U);
    EXPECT_EQ(order[0], Field::sessionLength);
    EXPECT_EQ(order[1], Field::onTime);
    EXPECT_EQ(order[2], Field::pulseFrequency);
    // Each once, and none that the unit does not have.
    EXPECT_EQ(std::ranges::count(order, Field::onTime), 1);
    EXPECT_EQ(std::ranges::count(order, Field::burstDuty), 0);
    EXPECT_EQ(order.size(), 9U);
}

TEST(CheckStimulator, AcceptsAUnitOfCommonPracticeOnceItHasAName)
{
    EXPECT_EQ(checkCodes(commonStimulator()), std::vector{FindingCode::notFilled});
    EXPECT_TRUE(checkCodes(someStimulator()).empty());
}

TEST(CheckStimulator, WantsOneToEightChannelsAndAWaveform)
{
    Stimulator unit = someStimulator();
    unit.channels = 8;
    EXPECT_TRUE(checkCodes(unit).empty());
    unit.channels = 9;
    EXPECT_EQ(checkCodes(unit), std::vector{FindingCode::outsideArithmetic});
    unit.channels = 0;
    EXPECT_EQ(checkCodes(unit), std::vector{FindingCode::outsideArithmetic});
    unit = someStimulator();
    unit.waveforms.clear();
    EXPECT_EQ(checkCodes(unit), std::vector{FindingCode::notFilled});
}

TEST(CheckStimulator, WantsEachRangeInOrderAndInsideTheArithmetic)
{
    for (const Field field : standardAskingOrder()) {
        if (field == Field::amplitudeCeiling) {
            continue; // shares its range with the other amplitude field
        }
        SCOPED_TRACE(static_cast<int>(field));
        const CountRange bounds = arithmeticBounds(field);
        const CountRange good{bounds.least, bounds.most, 1, bounds.least};
        const auto codesWith = [&](const CountRange& range) {
            Stimulator unit = someStimulator();
            setRange(unit, field, range);
            return checkCodes(unit);
        };
        EXPECT_TRUE(codesWith(good).empty());
        const std::vector outside{FindingCode::outsideArithmetic};
        EXPECT_EQ(codesWith({good.least, good.most, 0, good.least}), outside);
        EXPECT_EQ(codesWith({good.least - 1, good.most, 1, good.least}), outside);
        EXPECT_EQ(codesWith({good.least, good.most + 1, 1, good.least}), outside);
        EXPECT_EQ(codesWith({good.most, good.least, 1, good.least}), outside);
        EXPECT_EQ(codesWith({good.least, good.most, 1, good.most + 1}), outside);
    }
}

TEST(CheckStimulator, WantsARangeForEachSettingItsWaveformsNeed)
{
    Stimulator unit = someStimulator();
    unit.waveforms = {Waveform::asymmetricBalancedBiphasic, Waveform::kilohertzBursts};
    const std::vector<Finding> findings = checkStimulator(unit);
    ASSERT_EQ(findings.size(), 3U);
    EXPECT_EQ(findings[0].field, Field::secondPhaseDuration);
    EXPECT_EQ(findings[1].field, Field::carrierFrequency);
    EXPECT_EQ(findings[2].field, Field::burstDuty);
    for (const Finding& finding : findings) {
        EXPECT_EQ(finding.code, FindingCode::notFilled);
    }
    setRange(unit, Field::secondPhaseDuration, CountRange{100, 2000, 100, 1000});
    setRange(unit, Field::carrierFrequency, CountRange{2'500'000, 2'500'000, 1, 2'500'000});
    setRange(unit, Field::burstDuty, CountRange{100, 500, 100, 500});
    EXPECT_TRUE(checkCodes(unit).empty());
}

TEST(CheckStimulator, WantsMemoriesOutputAndOwnWordsWithinTheirBounds)
{
    const std::vector outside{FindingCode::outsideArithmetic};
    Stimulator unit = someStimulator();
    unit.memories = mostMemories;
    unit.mostOutput = 1_uA;
    unit.ownWords = {{Field::onTime, std::string(longestOwnWord, 'W')}};
    EXPECT_TRUE(checkCodes(unit).empty());
    unit.memories = mostMemories + 1;
    EXPECT_EQ(checkCodes(unit), outside);
    unit.memories = -1;
    EXPECT_EQ(checkCodes(unit), outside);
    unit = someStimulator();
    unit.mostOutput = 0_uA;
    EXPECT_EQ(checkCodes(unit), outside);
    unit = someStimulator();
    unit.ownWords = {{Field::onTime, ""}};
    EXPECT_EQ(checkCodes(unit), outside);
    unit.ownWords = {{Field::onTime, std::string(longestOwnWord + 1, 'W')}};
    EXPECT_EQ(checkCodes(unit), outside);
}

TEST(PresetSettings, StartWithWhatTheUnitShowsWhenItIsNew)
{
    const Settings settings = presetSettings(someStimulator());
    EXPECT_EQ(settings.pulseFrequency, 50_Hz);
    EXPECT_EQ(settings.onTime, 4s);
    EXPECT_EQ(settings.offTime, 12s);
    EXPECT_EQ(settings.sessionLength, 20min);
    EXPECT_EQ(settings.amplitude, AmplitudeGuidance{});
    EXPECT_TRUE(stimulatorFindings(settings, someStimulator()).empty());
    EXPECT_TRUE(settingsFindings(settings, RampHabit::includedInOnTime).empty());
}

TEST(StimulatorFindings, SayWhatTheUnitCannotBeSetTo)
{
    const Stimulator unit = someStimulator();
    Settings settings = someSettings();
    EXPECT_TRUE(stimulatorFindings(settings, unit).empty());

    settings.phaseDuration = 420_us; // goes to 400
    settings.rampUp = 700ms;         // in steps of 500
    const std::vector<Finding> findings = stimulatorFindings(settings, unit);
    ASSERT_EQ(codesOf(findings),
              (std::vector{FindingCode::outsideStimulator, FindingCode::offStep}));
    EXPECT_EQ(findings[0].field, Field::phaseDuration);
    EXPECT_EQ(findings[0].limit, (Amount{400.0, Unit::microsecond}));
    EXPECT_EQ(findings[1].field, Field::rampUp);
    EXPECT_EQ(findings[1].limit, (Amount{0.5, Unit::second}));
    EXPECT_FALSE(hasStop(findings));
}

TEST(StimulatorFindings, ForbidAWaveformTheUnitDoesNotGive)
{
    Settings settings = someSettings();
    settings.waveform = Waveform::kilohertzBursts;
    const std::vector<Finding> findings = stimulatorFindings(settings, someStimulator());
    EXPECT_TRUE(hasStop(findings));
    EXPECT_EQ(findings.front().code, FindingCode::waveformNotOffered);
}
