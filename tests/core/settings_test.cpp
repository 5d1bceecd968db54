// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"

#include "core/settings.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

std::vector<FindingCode> codes(const Settings& settings,
                               RampHabit habit = RampHabit::includedInOnTime)
{
    return codesOf(settingsFindings(settings, habit));
}

} // namespace

TEST(SettingsFindings, AreEmptyForOrdinarySettings)
{
    EXPECT_TRUE(codes(someSettings()).empty());
    EXPECT_TRUE(codes(someSettings(), RampHabit::addedToOnTime).empty());
}

// Pulse frequency × (first phase + gap + second phase) ≤ 1: at 50 Hz a pulse has 20 000 µs.
TEST(SettingsFindings, PulsesMustNotOverlap)
{
    Settings settings = someSettings();
    settings.phaseDuration = 9950_us;
    settings.interphaseGap = 100_us;
    EXPECT_TRUE(codes(settings).empty());
    settings.interphaseGap = 101_us;
    const std::vector<Finding> findings = settingsFindings(settings, RampHabit::includedInOnTime);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::pulsesOverlap});
    EXPECT_EQ(findings.front().severity, Severity::stop);
    EXPECT_EQ(findings.front().figure, (Amount{20'001.0, Unit::microsecond}));
    EXPECT_EQ(findings.front().limit, (Amount{20'000.0, Unit::microsecond}));
    EXPECT_EQ(findings.front().advice, Advice::lowerFrequencyOrPhase);
}

TEST(SettingsFindings, PhaseDurationsTypedInMillisecondsAreCaught)
{
    Settings settings = someSettings();
    settings.phaseDuration = 300'000_us; // "300 ms", as one published table misprints it
    EXPECT_EQ(codes(settings), std::vector{FindingCode::pulsesOverlap});
}

TEST(SettingsFindings, TheSecondPhaseCountsForTheOverlap)
{
    Settings settings = someSettings();
    settings.waveform = Waveform::asymmetricBalancedBiphasic;
    settings.phaseDuration = 1000_us;
    settings.interphaseGap = 0_us;
    settings.secondPhaseDuration = 19'000_us;
    EXPECT_TRUE(codes(settings).empty());
    settings.secondPhaseDuration = 19'001_us;
    EXPECT_EQ(codes(settings), std::vector{FindingCode::pulsesOverlap});
}

TEST(SettingsFindings, TheSecondPhaseIsTheLongerOne)
{
    Settings settings = someSettings();
    settings.waveform = Waveform::asymmetricBalancedBiphasic;
    settings.secondPhaseDuration = 300_us;
    EXPECT_TRUE(codes(settings).empty());
    settings.secondPhaseDuration = 299_us;
    const std::vector<Finding> findings = settingsFindings(settings, RampHabit::includedInOnTime);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::outsideArithmetic});
    EXPECT_EQ(findings.front().field, Field::secondPhaseDuration);
    EXPECT_EQ(findings.front().limit, (Amount{300.0, Unit::microsecond}));
    EXPECT_TRUE(hasStop(findings));
}

TEST(SettingsFindings, RampsInsideTheOnTimeMustFitIntoIt)
{
    Settings settings = someSettings();
    settings.rampUp = 2s;
    settings.rampDown = 1s;
    EXPECT_TRUE(codes(settings).empty());
    settings.rampDown = 2s;
    const std::vector<Finding> filled = settingsFindings(settings, RampHabit::includedInOnTime);
    ASSERT_EQ(codesOf(filled), std::vector{FindingCode::plateauIsZero});
    EXPECT_FALSE(hasStop(filled));
    settings.rampDown = 2001ms;
    const std::vector<Finding> over = settingsFindings(settings, RampHabit::includedInOnTime);
    ASSERT_EQ(codesOf(over), std::vector{FindingCode::noPlateauLeft});
    EXPECT_TRUE(hasStop(over));
    EXPECT_TRUE(codes(settings, RampHabit::addedToOnTime).empty());
}

TEST(SettingsFindings, ContractionsNeedAnOffTime)
{
    Settings settings = someSettings();
    settings.offTime = 0s;
    EXPECT_EQ(codes(settings), std::vector{FindingCode::noOffTime});
}

TEST(SettingsFindings, ASessionHoldsOneOnPhaseAtLeast)
{
    Settings settings = someSettings();
    settings.rampUp = 1s;
    settings.sessionLength = 4s;
    EXPECT_TRUE(codes(settings).empty());
    const std::vector<Finding> findings = settingsFindings(settings, RampHabit::addedToOnTime);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::sessionShorterThanOn});
    EXPECT_EQ(findings.front().limit, (Amount{5.0, Unit::second}));
}

TEST(SettingsFindings, AskForACeilingAboveWhatWasTolerated)
{
    Settings settings = someSettings();
    settings.amplitude.lastTolerated = 60_mA;
    settings.amplitude.ceiling = 60_mA;
    EXPECT_TRUE(codes(settings).empty());
    settings.amplitude.ceiling = 59_mA;
    const std::vector<Finding> findings = settingsFindings(settings, RampHabit::includedInOnTime);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::ceilingBelowTolerated});
    EXPECT_FALSE(hasStop(findings));
}

TEST(SettingsFindings, NameWhatAWaveformNeedsAndWasNotFilled)
{
    Settings settings = someSettings();
    settings.waveform = Waveform::kilohertzBursts;
    const std::vector<Finding> findings = settingsFindings(settings, RampHabit::includedInOnTime);
    ASSERT_EQ(codesOf(findings), (std::vector{FindingCode::notFilled, FindingCode::notFilled}));
    EXPECT_EQ(findings[0].field, Field::carrierFrequency);
    EXPECT_EQ(findings[1].field, Field::burstDuty);
}

TEST(SettingsFindings, WhatAWaveformDoesNotUseIsNotHeldAgainstIt)
{
    Settings settings = someSettings();
    settings.waveform = Waveform::kilohertzBursts;
    settings.carrierFrequency = 2500_Hz_carrier;
    settings.burstDuty = 50_percent_burst;
    settings.phaseDuration = PhaseDuration::fromCount(-5);
    EXPECT_TRUE(codes(settings).empty());
}

TEST(SettingsFindings, CurrentsThatLeaveAChargeAreNotForHome)
{
    Settings settings = someSettings();
    for (const Waveform waveform : {Waveform::unbalancedPulses, Waveform::directCurrent}) {
        settings.waveform = waveform;
        const std::vector<Finding> findings =
            settingsFindings(settings, RampHabit::includedInOnTime);
        EXPECT_EQ(codesOf(findings), std::vector{FindingCode::directCurrentUnsuitable});
        EXPECT_TRUE(hasStop(findings));
    }
}

TEST(SettingsFindings, SayFigureAndLimitWhereTheArithmeticEnds)
{
    Settings settings = someSettings();
    settings.sessionLength = 25h;
    const std::vector<Finding> findings = settingsFindings(settings, RampHabit::includedInOnTime);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::outsideArithmetic});
    EXPECT_EQ(findings.front().field, Field::sessionLength);
    EXPECT_EQ(findings.front().figure, (Amount{1500.0, Unit::minute}));
    EXPECT_EQ(findings.front().limit, (Amount{1440.0, Unit::minute}));
}

TEST(Settings, EachFieldComesBackAsItWasSet)
{
    for (const Field field : standardAskingOrder()) {
        Settings settings = someSettings();
        setCount(settings, field, 12'345);
        EXPECT_EQ(countIn(settings, field), 12'345) << static_cast<int>(field);
        // No other field was touched.
        for (const Field other : standardAskingOrder()) {
            if (other != field) {
                EXPECT_EQ(countIn(settings, other), countIn(someSettings(), other));
            }
        }
    }
    EXPECT_EQ(countIn(someSettings(), Field::muscle), std::nullopt);
}

TEST(Settings, OnlyOptionalFieldsCanBeEmptied)
{
    Settings settings = someSettings();
    settings.secondPhaseDuration = 600_us;
    settings.carrierFrequency = 2500_Hz_carrier;
    settings.burstDuty = 50_percent_burst;
    settings.amplitude = {60_mA, 70_mA};
    for (const Field field : standardAskingOrder()) {
        setCount(settings, field, std::nullopt);
    }
    EXPECT_EQ(settings, someSettings());
}

TEST(AmountIn, SaysAFieldInTheUnitPeopleRead)
{
    EXPECT_EQ(amountIn(Field::pulseFrequency, 50'000), (Amount{50.0, Unit::hertz}));
    EXPECT_EQ(amountIn(Field::onTime, 2500), (Amount{2.5, Unit::second}));
    EXPECT_EQ(amountIn(Field::sessionLength, 1'200'000), (Amount{20.0, Unit::minute}));
    EXPECT_EQ(amountIn(Field::amplitudeCeiling, 42'500), (Amount{42.5, Unit::milliampere}));
    EXPECT_EQ(amountIn(Field::interphaseGap, 100), (Amount{100.0, Unit::microsecond}));
    EXPECT_EQ(amountIn(Field::weeks, 4), (Amount{4.0, Unit::count}));
}

TEST(DoseAmplitude, IsTheHighestThatThePatientMayGo)
{
    EXPECT_EQ(doseAmplitude({}), std::nullopt);
    EXPECT_EQ(doseAmplitude({60_mA, std::nullopt}), 60_mA);
    EXPECT_EQ(doseAmplitude({std::nullopt, 70_mA}), 70_mA);
    EXPECT_EQ(doseAmplitude({60_mA, 70_mA}), 70_mA);
    EXPECT_EQ(doseAmplitude({70_mA, 60_mA}), 70_mA);
}
