// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of the cases come from the reference table of sessions; differences are theirs.
#include "tests/core/examples.h"
#include "tests/core/reference_cases.h"

#include "core/settings_comparison.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;
using testing::Contains;
using testing::IsEmpty;

namespace
{

SettingsCase caseOf(const ReferenceTable& table, std::size_t row)
{
    SettingsCase given;
    given.name = table.text(row, "case_id");
    given.settings = settingsOfCase(table, row);
    given.habit = habitOfCase(table, row);
    given.smallerPad = PadArea(table.number(row, "pad_area_cm2"));
    given.sessionsPerWeek = std::stoll(table.text(row, "sessions_per_week"));
    return given;
}

SettingsCase someCase(const std::string& name)
{
    SettingsCase given;
    given.name = name;
    given.settings = someSettings();
    return given;
}

double valueOf(const ComparedCase& compared, ComparedFigure figure)
{
    return compared.value(figure).value->value;
}

} // namespace

TEST(SettingsComparison, ShowsTheFiguresOfTheReferenceAndTheirDifferences)
{
    const ReferenceTable table = referenceSessions();
    std::vector<SettingsCase> cases;
    for (std::size_t row = 0; row < table.rowCount(); ++row) {
        cases.push_back(caseOf(table, row));
    }
    FatigueMemory memory;
    const auto compared = compareSettings(cases, memory);
    ASSERT_TRUE(compared);
    ASSERT_EQ(compared->size(), table.rowCount());
    for (std::size_t row = 0; row < table.rowCount(); ++row) {
        const ComparedCase& now = (*compared)[row];
        SCOPED_TRACE(now.name);
        expectCell(table, row, "on_time_s", valueOf(now, ComparedFigure::totalOnTime));
        expectCell(table, row, "pulses", valueOf(now, ComparedFigure::pulses));
        expectCell(table, row, "rms_density_train_ma_cm2",
                   valueOf(now, ComparedFigure::currentDensity));
        expectCell(table, row, "week_charge_mc", valueOf(now, ComparedFigure::weekCharge));
        const ComparedValue& onTime = now.value(ComparedFigure::totalOnTime);
        if (row == 0) {
            EXPECT_FALSE(onTime.difference);
        } else {
            EXPECT_DOUBLE_EQ(*onTime.difference,
                             table.number(row, "on_time_s") - table.number(0, "on_time_s"));
        }
    }
}

TEST(SettingsComparison, JudgesFatigueWhereOnlyOffTimeOrSessionLengthDiffer)
{
    SettingsCase longer = someCase("longer rest");
    longer.settings.offTime = 20s;
    longer.settings.sessionLength = 30min;
    FatigueMemory memory;
    const auto compared = compareSettings({someCase("now"), longer}, memory);
    ASSERT_TRUE(compared);
    EXPECT_TRUE((*compared)[1].model.isAllowed());
    EXPECT_GT(*(*compared)[1].value(ComparedFigure::fatigueRatioIntegral).difference, 0.0);
}

TEST(SettingsComparison, RefusesToJudgeFatigueForAnyOtherDifference)
{
    const auto refusals = [](void (*change)(SettingsCase&)) {
        SettingsCase other = someCase("other");
        change(other);
        FatigueMemory memory;
        const auto compared = compareSettings({someCase("now"), other}, memory);
        const ComparedCase& judged = (*compared)[1];
        EXPECT_FALSE(judged.value(ComparedFigure::fatigueRatioIntegral).difference);
        EXPECT_FALSE(judged.value(ComparedFigure::fatigueRatioPeak).difference);
        EXPECT_TRUE(judged.value(ComparedFigure::pulses).difference);
        return judged.model.refusals;
    };
    EXPECT_THAT(refusals([](SettingsCase& c) { c.settings.pulseFrequency = 35_Hz; }),
                Contains(ModelRefusal::frequencyDiffers));
    EXPECT_THAT(refusals([](SettingsCase& c) { c.settings.onTime = 6s; }),
                Contains(ModelRefusal::onPhaseDiffers));
    EXPECT_THAT(refusals([](SettingsCase& c) { c.settings.rampUp = 1s; }),
                Contains(ModelRefusal::rampsDiffer));
    EXPECT_THAT(refusals([](SettingsCase& c) {
                    c.settings.waveform = Waveform::asymmetricBalancedBiphasic;
                    c.settings.secondPhaseDuration = 900_us;
                }),
                Contains(ModelRefusal::waveformDiffers));
    // The model knows no form of the pulse, whichever part of it differs.
    EXPECT_THAT(refusals([](SettingsCase& c) { c.settings.interphaseGap = 50_us; }),
                testing::ElementsAre(ModelRefusal::pulseFormDiffers));
}

TEST(SettingsComparison, SaysThatAmplitudeAndPhaseDurationDoNotEnterTheModel)
{
    SettingsCase other = someCase("stronger");
    other.settings.amplitude.lastTolerated = 50_mA;
    other.settings.phaseDuration = 350_us;
    SettingsCase now = someCase("now");
    now.settings.amplitude.lastTolerated = 40_mA;
    FatigueMemory memory;
    const auto compared = compareSettings({now, other}, memory);
    ASSERT_TRUE(compared);
    EXPECT_TRUE((*compared)[1].model.isAllowed());
    EXPECT_TRUE((*compared)[1].model.amplitudeIgnored);
    EXPECT_TRUE((*compared)[1].model.phaseDurationIgnored);
    EXPECT_EQ(*(*compared)[1].value(ComparedFigure::fatigueRatioIntegral).difference, 0.0);
}

TEST(SettingsComparison, HoldsTheSamePlateauWithRampsAddedForAnotherOnPhase)
{
    SettingsCase included = someCase("included");
    included.settings.onTime = 6s;
    included.settings.rampUp = 1s;
    included.settings.rampDown = 1s;
    SettingsCase added = included;
    added.name = "added";
    added.habit = RampHabit::addedToOnTime;
    added.settings.onTime = 4s;
    FatigueMemory memory;
    const auto compared = compareSettings({included, added}, memory);
    ASSERT_TRUE(compared);
    EXPECT_TRUE((*compared)[1].model.isAllowed()); // the same on phase, said in two ways
    added.settings.onTime = 6s;
    const auto longer = compareSettings({included, added}, memory);
    EXPECT_THAT((*longer)[1].model.refusals, Contains(ModelRefusal::onPhaseDiffers));
}

TEST(SettingsComparison, LeavesOutWhatIsNotKnown)
{
    FatigueMemory memory;
    SettingsCase bursts = someCase("bursts");
    bursts.settings.waveform = Waveform::kilohertzBursts;
    bursts.settings.carrierFrequency = 2500_Hz_carrier;
    bursts.settings.burstDuty = 50_percent_burst;
    const auto compared = compareSettings({someCase("no amplitude"), bursts}, memory);
    ASSERT_TRUE(compared);
    EXPECT_FALSE((*compared)[0].value(ComparedFigure::phaseCharge).value);
    EXPECT_FALSE((*compared)[0].value(ComparedFigure::weekPulses).value);
    EXPECT_TRUE((*compared)[0].isInModel);
    EXPECT_FALSE((*compared)[1].isInModel);
    EXPECT_FALSE((*compared)[1].value(ComparedFigure::fatigueRatioPeak).value);
}

TEST(SettingsComparison, NamesTheCaseThatCannotRun)
{
    SettingsCase impossible = someCase("second");
    impossible.settings.offTime = 0s;
    FatigueMemory memory;
    const auto compared = compareSettings({someCase("first"), impossible}, memory);
    ASSERT_FALSE(compared);
    EXPECT_EQ(compared.error().subject, "second");
    EXPECT_EQ(compared.error().field, Field::offTime);
}

TEST(SettingsComparison, CarriesTheFindingsOfEachCase)
{
    SettingsCase small = someCase("small pad"); // 2 mA/cm²: IEC 60601-2-10, instructions for use
    small.settings.pulseFrequency = 75_Hz;
    small.settings.phaseDuration = 400_us;
    small.settings.amplitude.lastTolerated = 100_mA;
    small.smallerPad = PadArea(7.069);
    FatigueMemory memory;
    const auto compared = compareSettings({someCase("now"), small}, memory);
    ASSERT_TRUE(compared);
    EXPECT_THAT((*compared)[0].findings, IsEmpty());
    EXPECT_THAT(codesOf((*compared)[1].findings), Contains(FindingCode::currentDensityHigh));
}
