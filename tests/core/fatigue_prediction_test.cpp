// SPDX-License-Identifier: GPL-3.0-or-later
// The force–fatigue model against the reference table of sessions: the same equations solved with
// two other methods that agree to 1e-12, printed with 8 significant digits. Newtons are checked,
// never shown.
#include "tests/core/examples.h"
#include "tests/core/reference_cases.h"

#include "core/fatigue_prediction.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;
using testing::Contains;
using testing::Not;

namespace
{

/// Half a unit of the eighth digit, and 1e-7 of our own.
constexpr double tolerance = 1.5e-7;

FatigueOptions optionsOfCase(const ReferenceTable& table, std::size_t row)
{
    FatigueOptions options;
    options.phaseDurationRecruits = table.text(row, "recruitment_model") == "1";
    return options;
}

void expectModelCell(const ReferenceTable& table, std::size_t row, const std::string& column,
                     std::optional<double> computed)
{
    if (table.text(row, column).empty()) {
        EXPECT_FALSE(computed) << column;
        return;
    }
    ASSERT_TRUE(computed) << column;
    const double expected = table.number(row, column);
    EXPECT_NEAR(*computed, expected, tolerance * std::abs(expected)) << column;
}

template <class Whole, class Part>
std::optional<double> part(const std::optional<Whole>& whole, Part member)
{
    return whole ? std::optional<double>((*whole).*member) : std::nullopt;
}

std::size_t rowOf(const ReferenceTable& table, const std::string& id)
{
    for (std::size_t row = 0; row < table.rowCount(); ++row) {
        if (table.text(row, "case_id") == id) {
            return row;
        }
    }
    throw std::runtime_error("no such case: " + id);
}

} // namespace

TEST(FatiguePrediction, AgreesWithEveryModelColumnOfTheReferenceSessions)
{
    const ReferenceTable table = referenceSessions();
    for (std::size_t row = 0; row < table.rowCount(); ++row) {
        SCOPED_TRACE(table.text(row, "case_id"));
        const auto prediction = predictFatigue(settingsOfCase(table, row), habitOfCase(table, row),
                                               optionsOfCase(table, row));
        ASSERT_TRUE(prediction);
        expectModelCell(table, row, "recruitment_g", prediction->recruitedShare);
        expectModelCell(table, row, "peak_first_n",
                        part(prediction->first, &ContractionForce::peakNewtons));
        expectModelCell(table, row, "peak_last_n",
                        part(prediction->last, &ContractionForce::peakNewtons));
        expectModelCell(table, row, "fti_first_ns",
                        part(prediction->first, &ContractionForce::integralNewtonSeconds));
        expectModelCell(table, row, "fti_last_ns",
                        part(prediction->last, &ContractionForce::integralNewtonSeconds));
        expectModelCell(table, row, "peak_ratio_last_first",
                        part(prediction->lastToFirst, &FatigueRatio::peak));
        expectModelCell(table, row, "fti_ratio_last_first",
                        part(prediction->lastToFirst, &FatigueRatio::forceTimeIntegral));
        expectModelCell(table, row, "peak_ratio_last3_first3",
                        part(prediction->lastThreeToFirstThree, &FatigueRatio::peak));
        expectModelCell(table, row, "fti_ratio_last3_first3",
                        part(prediction->lastThreeToFirstThree, &FatigueRatio::forceTimeIntegral));
        expectModelCell(table, row, "a_end_n_per_ms", prediction->atEnd.forceScale);
        expectModelCell(table, row, "km_end", prediction->atEnd.halfActivation);
        expectModelCell(table, row, "tau1_end_ms", prediction->atEnd.relaxationTime);
    }
}

TEST(FatiguePrediction, AgreesWithTheReferenceCurveContractionByContraction)
{
    const ReferenceTable sessions = referenceSessions();
    const ReferenceTable curve =
        ReferenceTable::fromFile(QUADRILLE_TEST_REFERENCE "/model_per_contraction.csv");
    std::string id;
    std::vector<ContractionForce> contractions;
    for (std::size_t row = 0; row < curve.rowCount(); ++row) {
        if (curve.text(row, "case_id") != id) {
            id = curve.text(row, "case_id");
            const std::size_t session = rowOf(sessions, id);
            const auto predicted = predictContractions(settingsOfCase(sessions, session),
                                                       habitOfCase(sessions, session),
                                                       optionsOfCase(sessions, session));
            ASSERT_TRUE(predicted);
            contractions = *predicted;
        }
        const auto number = static_cast<std::size_t>(curve.number(row, "contraction"));
        ASSERT_LE(number, contractions.size());
        const ContractionForce& now = contractions[number - 1];
        SCOPED_TRACE(testing::Message() << id << ", contraction " << number);
        EXPECT_NEAR(now.peakNewtons / contractions[0].peakNewtons,
                    curve.number(row, "peak_relative"), tolerance);
        EXPECT_NEAR(now.integralNewtonSeconds / contractions[0].integralNewtonSeconds,
                    curve.number(row, "fti_relative"), tolerance);
    }
}

TEST(FatiguePrediction, OfAContractionThatIsCutCountsForNoRatio)
{
    Settings settings = someSettings();
    settings.sessionLength = 34s; // two whole contractions, the third is cut after 2 s
    const auto prediction = predictFatigue(settings, RampHabit::includedInOnTime);
    ASSERT_TRUE(prediction);
    const auto contractions = predictContractions(settings, RampHabit::includedInOnTime);
    ASSERT_TRUE(contractions);
    ASSERT_EQ(contractions->size(), 2U);
    EXPECT_DOUBLE_EQ(prediction->last->peakNewtons, contractions->back().peakNewtons);
    EXPECT_FALSE(prediction->lastThreeToFirstThree);
}

TEST(FatiguePrediction, OfASessionShorterThanOneContractionIsRefused)
{
    Settings settings = someSettings();
    settings.sessionLength = 3s;
    const auto prediction = predictFatigue(settings, RampHabit::includedInOnTime);
    ASSERT_FALSE(prediction);
    EXPECT_EQ(prediction.error().field, Field::sessionLength);
}

TEST(FatiguePrediction, HasNoRatioWhereTheShortestPhasesRecruitNothing)
{
    Settings settings = someSettings();
    settings.phaseDuration = 100_us; // below the threshold of 131.405 µs
    FatigueOptions options;
    options.phaseDurationRecruits = true;
    const auto prediction = predictFatigue(settings, RampHabit::includedInOnTime, options);
    ASSERT_TRUE(prediction);
    EXPECT_EQ(prediction->recruitedShare, 0.0);
    EXPECT_EQ(prediction->first->peakNewtons, 0.0);
    EXPECT_FALSE(prediction->lastToFirst);
}

TEST(FatiguePrediction, TakesNoNoticeOfAmplitudeAndUnaskedOfPhaseDuration)
{
    Settings other = someSettings();
    other.amplitude.lastTolerated = 80_mA;
    other.phaseDuration = 400_us;
    const auto a = predictFatigue(someSettings(), RampHabit::includedInOnTime);
    const auto b = predictFatigue(other, RampHabit::includedInOnTime);
    ASSERT_TRUE(a && b);
    EXPECT_EQ(a->lastToFirst->forceTimeIntegral, b->lastToFirst->forceTimeIntegral);
}

TEST(FatiguePrediction, OfKilohertzBurstsIsRefusedAtTheWaveform)
{
    Settings settings = someSettings();
    settings.waveform = Waveform::kilohertzBursts;
    settings.carrierFrequency = 2500_Hz_carrier;
    settings.burstDuty = 50_percent_burst;
    const auto prediction = predictFatigue(settings, RampHabit::includedInOnTime);
    ASSERT_FALSE(prediction);
    EXPECT_EQ(prediction.error().code, ErrorCode::impossible);
    EXPECT_EQ(prediction.error().field, Field::waveform);
}

TEST(FatiguePrediction, OutsideOneToAHundredAndFiftyHertzIsRefusedWithBothEnds)
{
    for (const PulseFrequency frequency : {999_mHz, 150'001_mHz}) {
        Settings settings = someSettings();
        settings.pulseFrequency = frequency;
        const auto prediction = predictFatigue(settings, RampHabit::includedInOnTime);
        ASSERT_FALSE(prediction);
        EXPECT_EQ(prediction.error().code, ErrorCode::outOfRange);
        EXPECT_EQ(prediction.error().field, Field::pulseFrequency);
        ASSERT_EQ(prediction.error().figures.size(), 3U);
        EXPECT_EQ(prediction.error().figures[1], (Amount{1.0, Unit::hertz}));
        EXPECT_EQ(prediction.error().figures[2], (Amount{150.0, Unit::hertz}));
    }
}

TEST(FatiguePrediction, OfContractionsThatFollowEachOtherFasterThanPulsesMayIsRefused)
{
    Settings settings = someSettings();
    settings.rampUp = settings.rampDown = 0ms;
    settings.onTime = 3ms;
    settings.offTime = 3ms; // 6 ms a cycle: 167 first pulses a second
    const auto prediction = predictFatigue(settings, RampHabit::includedInOnTime);
    ASSERT_FALSE(prediction);
    EXPECT_EQ(prediction.error().code, ErrorCode::outOfRange);
    EXPECT_EQ(prediction.error().field, Field::offTime);
    settings.offTime = 4ms; // 143 a second
    EXPECT_TRUE(predictFatigue(settings, RampHabit::includedInOnTime));
}

TEST(FatiguePrediction, OfAContractionOfMoreThanTenMinutesAtFiftyHertzIsRefused)
{
    Settings settings = someSettings();
    settings.onTime = 601s;
    settings.sessionLength = 1h;
    const auto prediction = predictFatigue(settings, RampHabit::includedInOnTime);
    ASSERT_FALSE(prediction);
    EXPECT_EQ(prediction.error().field, Field::onTime);
    EXPECT_EQ(prediction.error().figures.back(), (Amount{600.0, Unit::second}));
    settings.onTime = 600s;
    EXPECT_TRUE(predictFatigue(settings, RampHabit::includedInOnTime));
}

TEST(FatiguePrediction, OfSettingsThatCannotRunNamesTheSetting)
{
    Settings settings = someSettings();
    settings.rampUp = 3s;
    settings.rampDown = 2s;
    const auto prediction = predictFatigue(settings, RampHabit::includedInOnTime);
    ASSERT_FALSE(prediction);
    EXPECT_EQ(prediction.error().code, ErrorCode::impossible);
}

TEST(ForceOverTime, BeginsAtNothingAndReachesOneAtTheFirstPeak)
{
    // The reference puts the first peak of this session 3094.62 ms after its start.
    const auto samples = forceOverTime(someSettings(), RampHabit::includedInOnTime, 0ms, 16s, 1ms);
    ASSERT_TRUE(samples);
    ASSERT_EQ(samples->size(), 16'001U);
    EXPECT_EQ(samples->front().shareOfFirstPeak, 0.0);
    const auto peak = std::ranges::max_element(
        *samples, {}, [](const ForceSample& sample) { return sample.shareOfFirstPeak; });
    EXPECT_NEAR(peak->shareOfFirstPeak, 1.0, 2e-6); // sampled every millisecond
    EXPECT_EQ(peak->time, 3095ms);
}

TEST(ForceOverTime, AgreesWithTheReferenceInsideTheFirstContraction)
{
    // Force of the first contraction at 50 Hz from the reference, N; its peak is 294.43244 N.
    const std::vector<std::pair<Milliseconds, double>> reference{
        {5ms, 6.811713},    {20ms, 37.280816},   {40ms, 77.320128},   {60ms, 112.54989},
        {100ms, 167.54729}, {500ms, 287.44631},  {1000ms, 291.69093}, {2000ms, 293.64058},
        {4000ms, 293.8892}, {4050ms, 275.88833}, {4200ms, 60.18811},  {5000ms, 0.0014679376}};
    for (const auto& [time, newtons] : reference) {
        const auto sample =
            forceOverTime(someSettings(), RampHabit::includedInOnTime, time, 0ms, 1ms);
        ASSERT_TRUE(sample);
        ASSERT_EQ(sample->size(), 1U);
        EXPECT_NEAR(sample->front().shareOfFirstPeak, newtons / 294.43244, 1e-6) << time.count();
    }
}

TEST(ForceOverTime, DiesAwayWithoutAGapAfterTheLastPulse)
{
    // 30 and 35 Hz: the times of pulses are no whole milliseconds.
    for (const PulseFrequency frequency : {30_Hz, 35_Hz}) {
        Settings settings = someSettings();
        settings.pulseFrequency = frequency;
        for (const Milliseconds start : {0ms, 74 * 16'000ms}) {
            const auto samples = forceOverTime(settings, RampHabit::includedInOnTime,
                                               start + 4s + 100ms, 600ms, 5ms);
            ASSERT_TRUE(samples);
            for (std::size_t i = 1; i < samples->size(); ++i) {
                EXPECT_LT((*samples)[i].shareOfFirstPeak, (*samples)[i - 1].shareOfFirstPeak);
                EXPECT_GT((*samples)[i].shareOfFirstPeak, 0.0);
            }
        }
    }
}

TEST(ForceOverTime, LaterInTheSessionIsThatOfTheTiredMuscle)
{
    const auto samples =
        forceOverTime(someSettings(), RampHabit::includedInOnTime, 74 * 16s, 16s, 5ms);
    ASSERT_TRUE(samples);
    double peak = 0.0;
    for (const ForceSample& sample : *samples) {
        peak = std::max(peak, sample.shareOfFirstPeak);
    }
    EXPECT_NEAR(peak, 0.5825564, 2e-4); // sampled, so up to a step below the true peak
}

TEST(ForceOverTime, OutsideTheSessionIsRefused)
{
    const auto late = forceOverTime(someSettings(), RampHabit::includedInOnTime, 20min, 1s, 1ms);
    ASSERT_FALSE(late);
    EXPECT_EQ(late.error().field, Field::sessionLength);
    EXPECT_FALSE(forceOverTime(someSettings(), RampHabit::includedInOnTime, -1ms, 1s, 1ms));
    EXPECT_FALSE(forceOverTime(someSettings(), RampHabit::includedInOnTime, 0ms, 1s, 0ms));
}

TEST(Recovery, IsNearlyWholeAfterTenTimesItsTimeConstant)
{
    const auto soon = recoveryAfter(someSettings(), RampHabit::includedInOnTime, 12s);
    const auto later = recoveryAfter(someSettings(), RampHabit::includedInOnTime, 127s);
    const auto whole = recoveryAfter(someSettings(), RampHabit::includedInOnTime, 1270s);
    ASSERT_TRUE(soon && later && whole);
    EXPECT_LT((*soon)->forceTimeIntegral, (*later)->forceTimeIntegral);
    // What is left decays with 127 s (reference, section 3); exp(−10) of it is 4.5e-5.
    EXPECT_NEAR((*whole)->forceTimeIntegral, 1.0, 1e-4);
}

TEST(ModelLimits, AlwaysSayThatTheyAreGroupValues)
{
    Settings settings = someSettings();
    settings.sessionLength = 5min;
    EXPECT_EQ(modelLimits(settings).front(), ModelLimit::groupValuesNotThisPatient);
    EXPECT_THAT(modelLimits(settings), Not(Contains(ModelLimit::minutesExtrapolated)));
    EXPECT_THAT(modelLimits(someSettings()), Contains(ModelLimit::minutesExtrapolated));
    settings.pulseFrequency = 120_Hz;
    EXPECT_THAT(modelLimits(settings), Contains(ModelLimit::frequencyExtrapolated));
    FatigueOptions options;
    options.phaseDurationRecruits = true;
    EXPECT_THAT(modelLimits(settings, options), Contains(ModelLimit::phaseDurationUncertain));
}
