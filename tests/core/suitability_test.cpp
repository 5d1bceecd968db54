// SPDX-License-Identifier: GPL-3.0-or-later
// Each rule both ways: the unit that just passes, and the one that just does not.
#include "tests/core/examples.h"

#include "core/limits.h"
#include "core/plan_figures.h"
#include "core/suitability.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

std::vector<FindingCode> suitabilityCodes(const Stimulator& unit)
{
    return codesOf(suitabilityFindings(unit));
}

} // namespace

// Common practice, no source.
TEST(Suitability, AUnitOfCommonPracticeWillDo)
{
    EXPECT_TRUE(suitabilityFindings(someStimulator()).empty());
}

// Common practice, no source: charge that is left over burns the skin.
TEST(Suitability, DirectOrUnbalancedCurrentIsNotForMuscleExercise)
{
    Stimulator unit = someStimulator();
    for (const Waveform waveform : {Waveform::unbalancedPulses, Waveform::directCurrent}) {
        unit.waveforms = {waveform};
        const auto findings = suitabilityFindings(unit);
        EXPECT_EQ(codesOf(findings), std::vector{FindingCode::directCurrentUnsuitable});
        EXPECT_TRUE(hasStop(findings));
        EXPECT_EQ(findings.front().source, limits::commonPractice);
    }
    for (const Waveform waveform :
         {Waveform::symmetricBiphasic, Waveform::asymmetricBalancedBiphasic,
          Waveform::kilohertzBursts}) {
        unit.waveforms = {waveform};
        EXPECT_TRUE(suitabilityFindings(unit).empty());
    }
    unit.waveforms = {Waveform::unbalancedPulses, Waveform::symmetricBiphasic};
    EXPECT_TRUE(suitabilityFindings(unit).empty()) << "one of its currents will do";
}

// Common practice, no source.
TEST(Suitability, AUnitForPainReliefWithoutWorkAndRestWillNotDo)
{
    Stimulator unit = someStimulator();
    unit.hasWorkRestCycles = false;
    const auto findings = suitabilityFindings(unit);
    EXPECT_EQ(codesOf(findings), std::vector{FindingCode::noWorkRestCycles});
    EXPECT_TRUE(hasStop(findings));
    unit.waveforms = {Waveform::directCurrent};
    EXPECT_EQ(suitabilityCodes(unit),
              (std::vector{FindingCode::directCurrentUnsuitable, FindingCode::noWorkRestCycles}));
}

// Cameron's table of parameters: 200 to 350 µs for large muscles, 150 to 200 µs for small ones
// (read in a secondary text).
TEST(Suitability, PhasesThatEndBelow200MicrosecondsAreShortForLargeMuscles)
{
    Stimulator unit = someStimulator();
    unit.phaseDuration = {50_us, 200_us, 10_us, 100_us};
    EXPECT_TRUE(suitabilityFindings(unit).empty());
    unit.phaseDuration = {50_us, 190_us, 10_us, 100_us};
    const auto findings = suitabilityFindings(unit);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::phaseShortForLargeMuscles});
    EXPECT_EQ(findings.front().severity, Severity::attention);
    EXPECT_EQ(findings.front().figure, (Amount{190.0, Unit::microsecond}));
    EXPECT_EQ(findings.front().limit, (Amount{200.0, Unit::microsecond}));
    unit.waveforms = {Waveform::kilohertzBursts};
    EXPECT_TRUE(suitabilityFindings(unit).empty()) << "bursts have no phase duration to be set";
}

// Wigerstad-Lossing et al. 1988 stimulated the quadriceps with 65 to 100 mA (read in a secondary
// text).
TEST(Suitability, LessThan65MilliampereIsWeakForLargeMuscles)
{
    Stimulator unit = someStimulator();
    unit.amplitude = {0_mA, 65_mA, 1_mA, 0_mA};
    EXPECT_TRUE(suitabilityFindings(unit).empty());
    unit.amplitude = {0_mA, 64_mA, 1_mA, 0_mA};
    const auto findings = suitabilityFindings(unit);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::outputLowForLargeMuscles});
    EXPECT_FALSE(hasStop(findings));
    EXPECT_EQ(findings.front().figure, (Amount{64.0, Unit::milliampere}));
}

TEST(Suitability, WhatThePapersStateCountsWhereItIsLessThanWhatCanBeSet)
{
    Stimulator unit = someStimulator(); // can be set to 100 mA
    unit.mostOutput = 65_mA;
    EXPECT_TRUE(suitabilityFindings(unit).empty());
    unit.mostOutput = 50_mA;
    EXPECT_EQ(suitabilityCodes(unit), std::vector{FindingCode::outputLowForLargeMuscles});
    unit.amplitude.most = 40_mA;
    unit.mostOutput = 120_mA;
    EXPECT_EQ(suitabilityFindings(unit).front().figure, (Amount{40.0, Unit::milliampere}));
}

// Nussbaum et al. 2017, table 7: on 6 to 10 s, off 12 to 50 s.
TEST(Suitability, AnOffTimeThatCannotExceedAUsualOnTimeIsToldOf)
{
    Stimulator unit = someStimulator();
    unit.onTime = {1s, 30s, 1s, 4s};
    unit.offTime = {1s, 7s, 1s, 4s};
    EXPECT_TRUE(suitabilityFindings(unit).empty());
    unit.offTime.most = 6s;
    const auto findings = suitabilityFindings(unit);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::offNeverLongerThanOn});
    EXPECT_EQ(findings.front().severity, Severity::attention);
    EXPECT_EQ(findings.front().figure, (Amount{6.0, Unit::second}));
    EXPECT_EQ(findings.front().limit, (Amount{6.0, Unit::second}));
    unit.onTime.most = 5s; // the longest that it gives
    EXPECT_TRUE(suitabilityFindings(unit).empty());
    unit.onTime = {8s, 30s, 1s, 8s};
    unit.offTime.most = 8s;
    EXPECT_EQ(suitabilityCodes(unit), std::vector{FindingCode::offNeverLongerThanOn});
}

TEST(Suitability, RampsThatAreAddedMakeTheOnPhaseLonger)
{
    Stimulator unit = someStimulator();
    unit.rampUp.least = 1s;
    unit.rampDown.least = 1s;
    unit.offTime.most = 8s;
    EXPECT_TRUE(suitabilityFindings(unit).empty());
    unit.rampHabit = RampHabit::addedToOnTime; // 1 + 6 + 1 s
    EXPECT_EQ(suitabilityCodes(unit), std::vector{FindingCode::offNeverLongerThanOn});
}

TEST(Suitability, OnlyWhatStopsIsSaidAgainInEachBlock)
{
    Stimulator weak = someStimulator();
    weak.mostOutput = 30_mA;
    EXPECT_TRUE(blockFigures(someBlock(), weak).findings.empty());
    weak.hasWorkRestCycles = false;
    EXPECT_EQ(codesOf(blockFigures(someBlock(), weak).findings),
              std::vector{FindingCode::noWorkRestCycles});
}
