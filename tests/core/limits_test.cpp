// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"

#include "core/limits.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <numbers>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

std::vector<Finding> findingsFor(const Settings& settings, Amplitude amplitude, PadArea area)
{
    const Result<SessionTiming> timing = sessionTiming(someSettings(), RampHabit::includedInOnTime);
    EXPECT_TRUE(timing.has_value());
    return doseFindings(settings, doseOf(settings, amplitude, area, *timing));
}

const Finding* find(const std::vector<Finding>& findings, FindingCode code)
{
    const auto found = std::ranges::find(findings, code, &Finding::code);
    return found == findings.end() ? nullptr : &*found;
}

std::vector<Finding> timingFindingsFor(Milliseconds on, Milliseconds off, Milliseconds session)
{
    Settings settings = someSettings();
    settings.onTime = on;
    settings.offTime = off;
    settings.sessionLength = session;
    const Result<SessionTiming> timing = sessionTiming(settings, RampHabit::includedInOnTime);
    EXPECT_TRUE(timing.has_value());
    return timingFindings(*timing);
}

const PadArea largePad(1000.0);

} // namespace

// At 50 Hz and 300 µs, 2 mA/cm² are reached on 25 cm² at 288.7 mA and on a round pad of 3.2 cm at
// 92.87 mA (worked by hand: 2 × area / sqrt(0.03)). Limit: IEC 60601-2-10.
TEST(CurrentDensityLimit, IsReachedWhereTheReverseCalculationSays)
{
    const Settings settings = someSettings();
    const PadArea square(25.0);
    EXPECT_FALSE(find(findingsFor(settings, 288'600_uA, square), FindingCode::currentDensityHigh));
    EXPECT_TRUE(find(findingsFor(settings, 288'700_uA, square), FindingCode::currentDensityHigh));
    const PadArea small(std::numbers::pi / 4.0 * 3.2 * 3.2);
    EXPECT_FALSE(find(findingsFor(settings, 92'860_uA, small), FindingCode::currentDensityHigh));
    EXPECT_TRUE(find(findingsFor(settings, 92'870_uA, small), FindingCode::currentDensityHigh));
}

// 75 Hz, 400 µs, 100 mA on a round pad of 3 cm: 3.465 mA/cm² (worked by hand).
TEST(CurrentDensityLimit, SaysFigureLimitSourceAndWhatToDo)
{
    Settings settings = someSettings();
    settings.pulseFrequency = 75_Hz;
    settings.phaseDuration = 400_us;
    const std::vector<Finding> findings =
        findingsFor(settings, 100_mA, PadArea(std::numbers::pi / 4.0 * 9.0));
    const Finding* const finding = find(findings, FindingCode::currentDensityHigh);
    ASSERT_TRUE(finding);
    EXPECT_EQ(finding->severity, Severity::attention); // asks for attention, forbids nothing
    ASSERT_TRUE(finding->figure);
    EXPECT_NEAR(finding->figure->value, 3.465, 0.0005);
    EXPECT_EQ(finding->figure->unit, Unit::milliamperePerSquareCentimetre);
    EXPECT_EQ(finding->limit, (Amount{2.0, Unit::milliamperePerSquareCentimetre}));
    EXPECT_EQ(finding->advice, Advice::largerPadOrLessAmplitude);
    EXPECT_FALSE(finding->source.name.empty());
    EXPECT_FALSE(finding->source.fromMemory);
    EXPECT_EQ(findings.size(), 1U);
}

// 50 mA r.m.s. to 400 Hz, 80 mA to 1500 Hz, 100 mA above (IEC 60601-2-10, clause 201.12.4.104,
// value from memory). At 50 Hz and 300 µs, 50 mA r.m.s. need 288.7 mA (worked by hand).
TEST(RmsCurrentLimit, DependsOnTheFrequencyAndSaysThatItIsFromMemory)
{
    EXPECT_EQ(limits::mostRmsCurrent(1.0).shown(), 50.0);
    EXPECT_EQ(limits::mostRmsCurrent(400.0).shown(), 50.0);
    EXPECT_EQ(limits::mostRmsCurrent(400.1).shown(), 80.0);
    EXPECT_EQ(limits::mostRmsCurrent(1500.0).shown(), 80.0);
    EXPECT_EQ(limits::mostRmsCurrent(1500.1).shown(), 100.0);

    EXPECT_TRUE(findingsFor(someSettings(), 288'600_uA, largePad).empty());
    const std::vector<Finding> findings = findingsFor(someSettings(), 288'700_uA, largePad);
    const Finding* const finding = find(findings, FindingCode::rmsCurrentHigh);
    ASSERT_TRUE(finding);
    EXPECT_TRUE(finding->source.fromMemory);
    EXPECT_EQ(finding->limit, (Amount{50.0, Unit::milliampere}));
    EXPECT_EQ(finding->advice, Advice::lessAmplitude);
}

// Half-filled bursts of 2.5 kHz at 102 mA peak are 51 mA r.m.s. Which rate chooses the row is not
// known, so the lower limit holds.
TEST(RmsCurrentLimit, TakesTheLowerLimitForKilohertzBursts)
{
    Settings settings = someSettings();
    settings.waveform = Waveform::kilohertzBursts;
    settings.carrierFrequency = 2500_Hz_carrier;
    settings.burstDuty = 50_percent_burst;
    EXPECT_TRUE(find(findingsFor(settings, 102_mA, largePad), FindingCode::rmsCurrentHigh));
    EXPECT_FALSE(find(findingsFor(settings, 99_mA, largePad), FindingCode::rmsCurrentHigh));
}

// 300 mJ into 500 ohm (IEC 60601-2-10:1987, 51.104): a pulse of 2 × 300 µs at 1.000 A, a pulse of
// 2 × 50 ms at 77.46 mA (worked by hand).
TEST(PulseEnergyLimit, IsReachedWhereTheReverseCalculationSays)
{
    Settings settings = someSettings();
    settings.pulseFrequency = 1_Hz;
    EXPECT_FALSE(find(findingsFor(settings, 1000_mA, largePad), FindingCode::pulseEnergyHigh));
    EXPECT_TRUE(find(findingsFor(settings, 1001_mA, largePad), FindingCode::pulseEnergyHigh));
    settings.phaseDuration = 50'000_us;
    EXPECT_FALSE(find(findingsFor(settings, 77'450_uA, largePad), FindingCode::pulseEnergyHigh));
    const std::vector<Finding> findings = findingsFor(settings, 77'470_uA, largePad);
    const Finding* const finding = find(findings, FindingCode::pulseEnergyHigh);
    ASSERT_TRUE(finding);
    EXPECT_FALSE(finding->source.fromMemory);
}

// Below 0.25 W/cm² (FDA guidance of 9 June 1999): 50 Hz, 300 µs, 100 mA into 500 ohm are 150 mW, so
// 0.6 cm² reach the limit. 0.25 itself is no longer below it.
TEST(PowerDensityLimit, MustStayBelowAQuarterOfAWattPerSquareCentimetre)
{
    EXPECT_FALSE(
        find(findingsFor(someSettings(), 100_mA, PadArea(0.601)), FindingCode::powerDensityHigh));
    EXPECT_TRUE(
        find(findingsFor(someSettings(), 100_mA, PadArea(0.599)), FindingCode::powerDensityHigh));

    Dose dose;
    dose.powerDensityTrain = limits::mostPowerDensity;
    EXPECT_TRUE(find(doseFindings(someSettings(), dose), FindingCode::powerDensityHigh));
}

TEST(DoseFindings, AreEmptyForOrdinarySettings)
{
    EXPECT_TRUE(findingsFor(someSettings(), 60_mA, PadArea(25.0)).empty());
}

// At least 1 s on and 1 s off where contractions are repeated (FDA guidance of 9 June 1999).
TEST(TimingFindings, AskForASecondOnAndASecondOff)
{
    EXPECT_EQ(codesOf(timingFindingsFor(200ms, 1300ms, 20min)),
              std::vector{FindingCode::onTimeUnderOneSecond});
    EXPECT_EQ(codesOf(timingFindingsFor(1s, 999ms, 1'999ms)),
              std::vector{FindingCode::offTimeUnderOneSecond});
    EXPECT_TRUE(timingFindingsFor(1s, 1s, 20s).empty());
    const Finding finding = timingFindingsFor(200ms, 1300ms, 20min).front();
    EXPECT_EQ(finding.figure, (Amount{0.2, Unit::second}));
    EXPECT_EQ(finding.limit, (Amount{1.0, Unit::second}));
    EXPECT_EQ(finding.source, limits::leastOnAndOffSource);
}

// Common practice, no source; and it says so.
TEST(TimingFindings, AskForAnOffTimeAsLongAsTheOnPhase)
{
    const std::vector<Finding> findings = timingFindingsFor(10s, 8s, 190s);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::offShorterThanOn});
    EXPECT_EQ(findings.front().source, limits::commonPractice);
    EXPECT_TRUE(timingFindingsFor(8s, 8s, 160s).empty());
}

TEST(TimingFindings, NoteACutContraction)
{
    const std::vector<Finding> findings = timingFindingsFor(4s, 12s, 594'500ms);
    ASSERT_EQ(codesOf(findings), std::vector{FindingCode::lastContractionCut});
    EXPECT_EQ(findings.front().severity, Severity::note);
    EXPECT_EQ(findings.front().figure, (Amount{2.5, Unit::second}));
    EXPECT_EQ(findings.front().limit, (Amount{4.0, Unit::second}));
}

TEST(Limits, MarkWhatWasNotCheckedAgainstTheOriginal)
{
    EXPECT_TRUE(limits::mostRmsCurrentSource.fromMemory);
    EXPECT_FALSE(limits::attentionCurrentDensitySource.fromMemory);
    EXPECT_FALSE(limits::mostPulseEnergySource.fromMemory);
    EXPECT_FALSE(limits::mostPowerDensitySource.fromMemory);
    EXPECT_FALSE(limits::leastOnAndOffSource.fromMemory);
}
