// SPDX-License-Identifier: GPL-3.0-or-later
// Expected settings and figures are calculated by hand beside each check.
#include "tests/core/examples.h"

#include "core/plan_figures.h"
#include "core/settings_comparison.h"
#include "core/unit_fit.h"

#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <limits>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

/// Coarse steps and narrow ranges.
Stimulator coarseUnit()
{
    Stimulator unit = someStimulator();
    unit.pulseFrequency = {2_Hz, 100_Hz, 1_Hz, 50_Hz};
    unit.phaseDuration = {50_us, 350_us, 25_us, 250_us};
    unit.amplitude = {0_mA, 80_mA, 1_mA, 0_mA};
    unit.onTime = {1s, 20s, 1s, 5s};
    unit.offTime = {1s, 50s, 1s, 15s};
    unit.rampUp = {0s, 4s, 1s, 2s};
    unit.rampDown = {0s, 4s, 1s, 1s};
    unit.sessionLength = {5min, 60min, 5min, 20min};
    return unit;
}

Settings wantedSettings()
{
    Settings settings;
    settings.pulseFrequency = 50_Hz;
    settings.phaseDuration = 400_us;
    settings.onTime = 10s;
    settings.offTime = 25s;
    settings.rampUp = 1500ms;
    settings.rampDown = 1s;
    settings.sessionLength = 16min;
    settings.amplitude = {45500_uA, 90_mA};
    return settings;
}

FitChange change(Field field, FitValue wanted, FitValue possible, FitReason why)
{
    return {field, wanted, possible, why};
}

FitValue count(std::int64_t value)
{
    return value;
}

} // namespace

TEST(Fit, GoesToTheUnitsRangesAndSteps)
{
    const Fit fitted = fit(wantedSettings(), coarseUnit());
    EXPECT_THAT(
        fitted.changes,
        testing::ElementsAre(
            change(Field::phaseDuration, count(400), count(350), FitReason::outsideRange),
            // 1.5 s lies between 1 and 2 s; halves go down
            change(Field::rampUp, count(1500), count(1000), FitReason::betweenSteps),
            change(Field::sessionLength, count(960'000), count(900'000), FitReason::betweenSteps),
            change(Field::lastToleratedAmplitude, count(45'500), count(45'000),
                   FitReason::betweenSteps),
            change(Field::amplitudeCeiling, count(90'000), count(80'000),
                   FitReason::outsideRange)));
    EXPECT_TRUE(stimulatorFindings(fitted.settings, coarseUnit()).empty());
    EXPECT_TRUE(fit(fitted.settings, coarseUnit()).changes.empty()) << "what fits stays";
}

// Before: cycle 35 s, 960 s = 27 cycles and 15 s, which hold one more on phase: 28 contractions,
// 280 s; 90 mA × 400 µs = 36 µC; 90 × √(2 × 0.0004 s × 50 Hz) = 18 mA; / 25 cm² = 0.72.
// After: 900 s = 25 cycles and 25 s: 26 contractions, 260 s; 80 × 350 = 28 µC; 80 × √0.035 =
// 14.967 mA; / 25 = 0.5987.
TEST(Fit, ChangesTheFiguresAsCalculatedByHand)
{
    const SettingsCase before{.name = "wanted",
                              .settings = wantedSettings(),
                              .smallerPad = smallerPadArea(twoSquarePads())};
    SettingsCase after = before;
    after.settings = fit(wantedSettings(), coarseUnit()).settings;
    const auto compared = compareWithoutModel({before, after});
    ASSERT_TRUE(compared);
    const auto figure = [&](std::size_t which, ComparedFigure wanted) {
        const auto value = (*compared)[which].value(wanted).value;
        return value ? value->value : std::numeric_limits<double>::quiet_NaN();
    };
    EXPECT_EQ(figure(0, ComparedFigure::contractionsCompleted), 28);
    EXPECT_EQ(figure(1, ComparedFigure::contractionsCompleted), 26);
    EXPECT_EQ(figure(0, ComparedFigure::totalOnTime), 280);
    EXPECT_EQ(figure(1, ComparedFigure::totalOnTime), 260);
    EXPECT_NEAR(figure(1, ComparedFigure::dutyCycle), 10.0 / 35.0, 1e-12);
    EXPECT_NEAR(figure(0, ComparedFigure::phaseCharge), 36.0, 1e-9);
    EXPECT_NEAR(figure(1, ComparedFigure::phaseCharge), 28.0, 1e-9);
    EXPECT_NEAR(figure(0, ComparedFigure::rmsTrain), 18.0, 1e-9);
    EXPECT_NEAR(figure(1, ComparedFigure::rmsTrain), 14.967, 5e-4);
    EXPECT_NEAR(figure(0, ComparedFigure::currentDensity), 0.72, 1e-9);
    EXPECT_NEAR(figure(1, ComparedFigure::currentDensity), 0.5987, 5e-5);
    EXPECT_EQ((*compared)[1].value(ComparedFigure::contractionsCompleted).difference, -2.0);
    EXPECT_TRUE(std::isnan(figure(1, ComparedFigure::fatigueRatioPeak))) << "nobody asked";
}

TEST(Fit, NeverRaisesAnAmplitude)
{
    Stimulator unit = coarseUnit();
    unit.amplitude = {0_mA, 80_mA, 5_mA, 0_mA};
    Settings settings = wantedSettings();
    settings.amplitude = {44_mA, 49_mA}; // nearest would be 45 and 50
    const Fit fitted = fit(settings, unit);
    EXPECT_EQ(fitted.settings.amplitude.lastTolerated, 40_mA);
    EXPECT_EQ(fitted.settings.amplitude.ceiling, 45_mA);
    unit.amplitude = {50_mA, 80_mA, 5_mA, 50_mA};
    EXPECT_EQ(fit(settings, unit).settings.amplitude.ceiling, std::nullopt)
        << "the unit's least is above it";
    EXPECT_EQ(fit(settings, unit).changes.back(),
              change(Field::amplitudeCeiling, count(49'000), FitValue(), FitReason::outsideRange));
}

TEST(Fit, TakesAFixedSettingAsItIs)
{
    Stimulator unit = coarseUnit();
    unit.pulseFrequency = {35_Hz, 35_Hz, 1_Hz, 35_Hz};
    EXPECT_EQ(fit(wantedSettings(), unit).changes.front(),
              change(Field::pulseFrequency, count(50'000), count(35'000), FitReason::fixedOnUnit));
}

// Ramps of 2 s up and 1 s down. Inside an on time of 10 s the on phase is 10 s, which a unit that
// adds them gives with 7 s; and the other way round.
TEST(Fit, KeepsTheOnPhaseWhenTheRampHabitDiffers)
{
    Settings settings = wantedSettings();
    settings.rampUp = 2s;
    Stimulator unit = coarseUnit();
    unit.rampHabit = RampHabit::addedToOnTime;
    const Fit added = fit(settings, unit, RampHabit::includedInOnTime);
    EXPECT_EQ(added.settings.onTime, 7s);
    EXPECT_THAT(added.changes, testing::Contains(change(Field::onTime, count(10'000), count(7'000),
                                                        FitReason::rampHabit)));
    EXPECT_EQ(sessionTiming(added.settings, RampHabit::addedToOnTime)->onPhase, 10s);
    settings.onTime = 7s;
    unit.rampHabit = RampHabit::includedInOnTime;
    EXPECT_EQ(fit(settings, unit, RampHabit::addedToOnTime).settings.onTime, 10s);
    EXPECT_EQ(fit(settings, unit).settings.onTime, 7s) << "the same habit";
}

// 60 mA at 200 µs is 12 µC in a phase; at 300 µs it would be 18 µC, which nobody tolerated.
TEST(Fit, TakesNoAmplitudeOverToALongerPhaseOrAnotherWaveform)
{
    Settings settings = wantedSettings();
    settings.phaseDuration = 200_us;
    settings.amplitude.lastTolerated = 60_mA;
    settings.amplitude.ceiling = 70_mA;
    Stimulator unit = coarseUnit();
    unit.amplitude = {0_mA, 100_mA, 1_mA, 0_mA};
    unit.phaseDuration = {300_us, 300_us, 1_us, 300_us};
    const Fit longer = fit(settings, unit);
    EXPECT_EQ(longer.settings.amplitude.lastTolerated, std::nullopt);
    EXPECT_EQ(longer.settings.amplitude.ceiling, 70_mA) << "a ceiling is never taken away";
    EXPECT_THAT(longer.changes,
                testing::Contains(change(Field::lastToleratedAmplitude, count(60'000), FitValue(),
                                         FitReason::otherPulse)));
    unit.phaseDuration = {100_us, 100_us, 1_us, 100_us};
    EXPECT_EQ(fit(settings, unit).settings.amplitude.lastTolerated, 60_mA) << "less charge";
    unit.phaseDuration = {200_us, 200_us, 1_us, 200_us};
    unit.waveforms = {Waveform::asymmetricBalancedBiphasic};
    EXPECT_EQ(fit(settings, unit).settings.amplitude.lastTolerated, std::nullopt);
}

// An on time that ends at 3 s holds ramps of 2 s and 2 s no longer: 1 s down and 2 s up are left.
TEST(Fit, ShortensRampsThatNoLongerFitIntoTheOnTime)
{
    Stimulator unit = coarseUnit();
    unit.onTime.most = 3s;
    Settings settings = wantedSettings();
    settings.rampUp = 2s;
    settings.rampDown = 2s;
    const Fit fitted = fit(settings, unit);
    EXPECT_EQ(fitted.settings.onTime, 3s);
    EXPECT_EQ(fitted.settings.rampUp, 2s);
    EXPECT_EQ(fitted.settings.rampDown, 1s);
    EXPECT_THAT(fitted.changes, testing::Contains(change(Field::rampDown, count(2000), count(1000),
                                                         FitReason::rampsTooLong)));
    EXPECT_TRUE(sessionTiming(fitted.settings, unit.rampHabit));
}

TEST(Fit, TakesABalancedWaveformThatTheUnitGivesAndWhatOnlyThatOneHas)
{
    Stimulator unit = coarseUnit();
    unit.waveforms = {Waveform::directCurrent, Waveform::asymmetricBalancedBiphasic};
    unit.secondPhaseDuration = {50_us, 2000_us, 50_us, 200_us};
    const Fit fitted = fit(wantedSettings(), unit);
    EXPECT_EQ(fitted.settings.waveform, Waveform::asymmetricBalancedBiphasic);
    EXPECT_EQ(fitted.changes.front(),
              change(Field::waveform, Waveform::symmetricBiphasic,
                     Waveform::asymmetricBalancedBiphasic, FitReason::waveformNotOffered));
    // The unit starts with a second phase of 200 µs; it is never shorter than the first, 350 µs.
    EXPECT_EQ(fitted.settings.secondPhaseDuration, 350_us);
    EXPECT_TRUE(settingsFindings(fitted.settings, unit.rampHabit).empty());
    unit.waveforms = {Waveform::directCurrent};
    EXPECT_EQ(fit(wantedSettings(), unit).settings.waveform, Waveform::symmetricBiphasic)
        << "a unit that will not do is told of, not fitted to";
}

TEST(Fit, DropsAGapThatTheUnitDoesNotHave)
{
    Settings settings = wantedSettings();
    settings.interphaseGap = 100_us;
    EXPECT_THAT(fit(settings, coarseUnit()).changes,
                testing::Contains(
                    change(Field::interphaseGap, count(100), count(0), FitReason::notOnUnit)));
}

TEST(Fit, GivesAllSitesTheTimingOfTheFirstWhereChannelsShareIt)
{
    Stimulator unit = coarseUnit();
    Block block = someBlock();
    block.sites = {someSite(1), someSite(2)};
    block.sites[1].settings.onTime = 8s;
    block.sites[1].settings.phaseDuration = 200_us;
    const BlockFit fitted = fit(block, unit);
    ASSERT_EQ(fitted.changes.size(), 2U);
    EXPECT_TRUE(fitted.changes[0].empty());
    EXPECT_THAT(fitted.changes[1],
                testing::ElementsAre(
                    change(Field::onTime, count(8000), count(4000), FitReason::sharedTiming)));
    EXPECT_TRUE(fitted.isNeeded());
    EXPECT_TRUE(blockFigures(fitted.block, unit).findings.empty());
    EXPECT_EQ(fitted.block.sites[1].settings.phaseDuration, 200_us) << "each channel has its own";

    block.siteOrder = SiteOrder::oneAfterAnother;
    EXPECT_FALSE(fit(block, unit).isNeeded()) << "one after another each is set anew";
    block.siteOrder = SiteOrder::together;
    unit.channelsShareTiming = false;
    EXPECT_FALSE(fit(block, unit).isNeeded());
}
