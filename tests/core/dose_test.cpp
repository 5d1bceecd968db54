// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"
#include "tests/core/reference_cases.h"

#include "core/dose.h"
#include "core/plan_figures.h"

#include <cmath>
#include <gtest/gtest.h>
#include <optional>
#include <string>
#include <vector>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

SessionTiming timingOf(const Settings& settings)
{
    const Result<SessionTiming> timing = sessionTiming(settings, RampHabit::includedInOnTime);
    EXPECT_TRUE(timing.has_value());
    return timing ? *timing : SessionTiming{};
}

/// Both round to the same four significant digits.
void expectFourDigits(const char* figure, double computed, double expected)
{
    const double unit = std::pow(10.0, std::floor(std::log10(expected)) - 3.0);
    EXPECT_NEAR(computed, expected, 0.5001 * unit) << figure;
}

struct WorkedExample {
    std::string name;
    Settings settings;
    Amplitude amplitude;
    Pad pad;
    // expected, four significant digits
    double area, rms, density, charge, chargeDensity, power, powerDensity;
    std::optional<double> energy;
};

Settings pulses(Waveform waveform, PulseFrequency frequency, PhaseDuration phase)
{
    Settings settings = someSettings();
    settings.waveform = waveform;
    settings.pulseFrequency = frequency;
    settings.phaseDuration = phase;
    return settings;
}

Settings symmetric(PulseFrequency frequency, PhaseDuration phase)
{
    return pulses(Waveform::symmetricBiphasic, frequency, phase);
}

Settings asymmetric()
{
    Settings settings = pulses(Waveform::asymmetricBalancedBiphasic, 35_Hz, 250_us);
    settings.secondPhaseDuration = 1000_us;
    return settings;
}

Settings bursts()
{
    Settings settings = pulses(Waveform::kilohertzBursts, 50_Hz, 0_us);
    settings.carrierFrequency = 2500_Hz_carrier;
    settings.burstDuty = 50_percent_burst;
    return settings;
}

Pad rectangle(Length width, Length height)
{
    return {.width = width, .height = height};
}

Pad round(Length diameter)
{
    return {.shape = PadShape::round, .width = diameter, .height = diameter};
}

/// Worked by hand from the mean square of the current over one period (e.g. E1: 2 × 50 Hz × 300 µs
/// = 0.03; 60 mA × sqrt(0.03) = 10.39 mA; / 25 cm² = 0.4157; 60 × 300 / 1000 = 18 µC; 10.39² mA² ×
/// 500 ohm = 54 mW; 500 ohm × 60² mA² × 600 µs = 1.08 mJ).
std::vector<WorkedExample> workedExamples()
{
    const Settings e1 = symmetric(50_Hz, 300_us);
    const Settings e4 = symmetric(75_Hz, 400_us);
    const Pad square = rectangle(50_mm, 50_mm);
    return {
        {"E1", e1, 60_mA, square, 25.00, 10.39, 0.4157, 18.00, 0.7200, 54.00, 2.160, 1.080},
        {"E2, half the pad lifted", e1, 60_mA, rectangle(25_mm, 50_mm), 12.50, 10.39, 0.8314, 18.00,
         1.440, 54.00, 4.320, 1.080},
        {"E3, asymmetric", asymmetric(), 40_mA, round(32_mm), 8.042, 4.183, 0.5202, 10.00, 1.243,
         8.750, 1.088, 0.2500},
        {"E4", e4, 100_mA, rectangle(50_mm, 90_mm), 45.00, 24.49, 0.5443, 40.00, 0.8889, 300.0,
         6.667, 4.000},
        {"E5, E4 on a small pad", e4, 100_mA, round(30_mm), 7.069, 24.49, 3.465, 40.00, 5.659,
         300.0, 42.44, 4.000},
        {"E6", symmetric(50_Hz, 250_us), 80_mA, rectangle(76_mm, 127_mm), 96.52, 12.65, 0.1311,
         20.00, 0.2072, 80.00, 0.8288, 1.600},
        {"E7", symmetric(100_Hz, 500_us), 120_mA, rectangle(50_mm, 90_mm), 45.00, 37.95, 0.8433,
         60.00, 1.333, 720.0, 16.00, 7.200},
        {"E9, one phase only", pulses(Waveform::unbalancedPulses, 50_Hz, 300_us), 60_mA, square,
         25.00, 7.348, 0.2939, 18.00, 0.7200, 27.00, 1.080, 0.5400},
    };
}

void expectDose(const WorkedExample& example, const Dose& dose)
{
    expectFourDigits("r.m.s. current", dose.rmsTrain.shown(), example.rms);
    expectFourDigits("current density", dose.currentDensity.shown(), example.density);
    expectFourDigits("phase charge", dose.phaseCharge.shown(), example.charge);
    expectFourDigits("charge density", dose.chargeDensity.shown(), example.chargeDensity);
    expectFourDigits("power", dose.powerTrain.shown(), example.power);
    expectFourDigits("power density", dose.powerDensityTrain.shown(), example.powerDensity);
    ASSERT_EQ(dose.pulseEnergy.has_value(), example.energy.has_value());
    if (example.energy) {
        expectFourDigits("pulse energy", dose.pulseEnergy->shown(), *example.energy);
    }
}

/// What a unit puts out in one example, with the timing of ordinary pulses.
Dose doseIn(const Settings& settings, Amplitude amplitude, PadArea area)
{
    return doseOf(settings, amplitude, area, timingOf(someSettings()));
}

} // namespace

TEST(Dose, AgreesWithTheReferenceTableOfSessions)
{
    const ReferenceTable table = referenceSessions();
    for (std::size_t row = 0; row < table.rowCount(); ++row) {
        SCOPED_TRACE(table.text(row, "case_id"));
        const Settings settings = settingsOfCase(table, row);
        const Result<SessionTiming> timing = sessionTiming(settings, habitOfCase(table, row));
        ASSERT_TRUE(timing);
        const Dose dose = doseOf(settings, *settings.amplitude.lastTolerated,
                                 PadArea(table.number(row, "pad_area_cm2")), *timing);
        expectCell(table, row, "phase_charge_uc", dose.phaseCharge.shown());
        expectCell(table, row, "charge_density_uc_cm2", dose.chargeDensity.shown());
        expectCell(table, row, "rms_train_ma", dose.rmsTrain.shown());
        expectCell(table, row, "rms_cycle_ma", dose.rmsCycle.shown());
        expectCell(table, row, "rms_density_train_ma_cm2", dose.currentDensity.shown());
        expectCell(table, row, "power_density_train_mw_cm2", dose.powerDensityTrain.shown());
        expectCell(table, row, "power_density_cycle_mw_cm2", dose.powerDensityCycle.shown());
    }
}

TEST(Dose, OfAWeekAgreesWithTheReferenceTableOfSessions)
{
    const ReferenceTable table = referenceSessions();
    for (std::size_t row = 0; row < table.rowCount(); ++row) {
        SCOPED_TRACE(table.text(row, "case_id"));
        const Settings settings = settingsOfCase(table, row);
        const Result<SessionTiming> timing = sessionTiming(settings, habitOfCase(table, row));
        ASSERT_TRUE(timing);
        const Dose dose = doseOf(settings, *settings.amplitude.lastTolerated,
                                 PadArea(table.number(row, "pad_area_cm2")), *timing);
        const WeekFigures week =
            weekOf(*timing, table.thousandths(row, "sessions_per_week") / 1000, dose.phaseCharge);
        expectCount(table, row, "week_contractions_full", week.contractionsCompleted);
        expectCell(table, row, "week_on_time_s", static_cast<double>(week.onTime.count()) / 1e3);
        expectCount(table, row, "week_pulses", week.pulses);
        ASSERT_TRUE(week.charge);
        expectCell(table, row, "week_charge_mc", week.charge->shown());
    }
}

TEST(Dose, AgreesWithTheExamplesWorkedByHand)
{
    for (const WorkedExample& example : workedExamples()) {
        SCOPED_TRACE(example.name);
        const PadArea area = padArea(example.pad);
        expectFourDigits("area", area.shown(), example.area);
        expectDose(example, doseIn(example.settings, example.amplitude, area));
    }
}

// Sine bursts of 2.5 kHz, half of each period filled, 60 mA peak, 6.98 × 12.7 cm (worked by hand;
// half a sine of 200 µs holds 60 mA × 200 µs × 2/π).
TEST(Dose, OfKilohertzBurstsCountsHalfASineAndHasNoPulseEnergy)
{
    WorkedExample example;
    example.rms = 30.00;
    example.density = 0.3384;
    example.charge = 7.639;
    example.chargeDensity = 0.08618;
    example.power = 450.0;
    example.powerDensity = 5.076;
    expectDose(example, doseIn(bursts(), 60_mA, PadArea(6.98 * 12.7)));
}

// A pulse without its second phase: leaving it out understates the r.m.s. current by sqrt 2.
TEST(Dose, BothPhasesCountForTheRmsCurrent)
{
    const RmsCurrent both = rmsWithinTrain(symmetric(50_Hz, 300_us), 60_mA);
    const RmsCurrent one = rmsWithinTrain(pulses(Waveform::unbalancedPulses, 50_Hz, 300_us), 60_mA);
    EXPECT_NEAR(both.shown() / one.shown(), std::sqrt(2.0), 1e-12);
}

TEST(Dose, AGapCarriesNoCurrent)
{
    Settings withGap = symmetric(50_Hz, 300_us);
    withGap.interphaseGap = 100_us;
    EXPECT_EQ(rmsWithinTrain(withGap, 60_mA), rmsWithinTrain(symmetric(50_Hz, 300_us), 60_mA));
}

TEST(Dose, AnAsymmetricPulseWithEqualPhasesIsASymmetricOne)
{
    Settings equal = pulses(Waveform::asymmetricBalancedBiphasic, 50_Hz, 300_us);
    equal.secondPhaseDuration = 300_us;
    EXPECT_NEAR(rmsWithinTrain(equal, 60_mA).shown(),
                rmsWithinTrain(symmetric(50_Hz, 300_us), 60_mA).shown(), 1e-12);
}

// 15 s on with a 3 s ramp up inside, 45 s off: counting the ramp as it is gives 10.39 ×
// sqrt(13 / 60) = 4.837 mA over the cycle (worked by hand; a linear ramp counts a third of its time
// in the mean square). Counting it at full amplitude must never be below that.
TEST(Dose, CountingRampsAtFullAmplitudeErrsToTheSafeSide)
{
    Settings settings = symmetric(50_Hz, 300_us);
    settings.onTime = 15s;
    settings.rampUp = 3s;
    settings.offTime = 45s;
    settings.sessionLength = 15min;
    const SessionTiming timing = timingOf(settings);
    EXPECT_EQ(timing.pulses, 11'250); // 50 × 15 × 15
    const Dose dose = doseOf(settings, 60_mA, PadArea(25.0), timing);
    EXPECT_GT(dose.rmsCycle.shown(), 4.837);
    EXPECT_NEAR(dose.rmsCycle.shown(), dose.rmsTrain.shown() * 0.5, 1e-12); // sqrt(15 / 60)
}

TEST(Dose, SaysWhichAmplitudeItIsFor)
{
    EXPECT_EQ(doseIn(symmetric(50_Hz, 300_us), 42500_uA, PadArea(32.0)).amplitude, 42500_uA);
}

// 75 000 pulses of 18 µC are 1350 mC (worked by hand; case P01 of the reference table).
TEST(TotalCharge, IsOnePhaseOfEveryPulse)
{
    EXPECT_DOUBLE_EQ(totalCharge(75'000, ChargePerPhase(18.0)).shown(), 1350.0);
    EXPECT_DOUBLE_EQ(totalCharge(0, ChargePerPhase(18.0)).shown(), 0.0);
}
