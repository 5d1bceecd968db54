// SPDX-License-Identifier: GPL-3.0-or-later
// Variants beside the block in work: their figures are those of compareSettings(), curves and
// sentences.
#include "app/charts/chart_view.h"
#include "app/words/what_if_text.h"
#include "tests/app/what_if_job.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace quadrille::literals;
using namespace std::chrono_literals;

TEST_F(WhatIfVariants, ShowTheFiguresOfTheComparison)
{
    const Block block = tenOnThirtyOff();
    open(block);
    enter(0, Field::offTime, QStringLiteral("20"));
    ASSERT_TRUE(ratiosCome(1));
    SettingsCase plan{.name = {}, .settings = block.sites.front().settings};
    plan.smallerPad = smallerPadArea(block.sites.front().pads);
    plan.sessionsPerWeek = 5;
    SettingsCase variant = plan;
    variant.settings.offTime = 20s;
    FatigueMemory memory;
    const auto expected = compareSettings({plan, variant}, memory);
    ASSERT_TRUE(expected);
    for (const ComparedFigure shown :
         {ComparedFigure::contractionsCompleted, ComparedFigure::totalOnTime,
          ComparedFigure::dutyCycle, ComparedFigure::offOnRatio, ComparedFigure::pulses,
          ComparedFigure::weekContractions, ComparedFigure::weekOnTime, ComparedFigure::weekCharge,
          ComparedFigure::phaseCharge, ComparedFigure::chargeDensity, ComparedFigure::rmsTrain,
          ComparedFigure::currentDensity, ComparedFigure::powerDensityTrain,
          ComparedFigure::fatigueRatioIntegral, ComparedFigure::fatigueRatioPeak}) {
        const QuantityText& text = practice.text();
        const ComparedValue& planned = expected->at(0).value(shown);
        const ComparedValue& varied = expected->at(1).value(shown);
        EXPECT_EQ(figure(0, shown), comparedText(shown, planned.value, text));
        EXPECT_EQ(figure(1, shown), comparedText(shown, varied.value, text));
        EXPECT_EQ(difference(0, shown), differenceText(varied, text));
    }
    // By hand: 1200 / 40 = 30 and 1200 / 30 = 40 contractions, a third more; 150 and 200 a week.
    EXPECT_EQ(figure(0, ComparedFigure::contractionsCompleted), QStringLiteral("30"));
    EXPECT_EQ(figure(1, ComparedFigure::contractionsCompleted), QStringLiteral("40"));
    EXPECT_EQ(difference(0, ComparedFigure::contractionsCompleted), QStringLiteral("+33\u00A0%"));
    EXPECT_EQ(figure(1, ComparedFigure::weekContractions), QStringLiteral("200"));
    EXPECT_EQ(difference(0, ComparedFigure::offOnRatio), QStringLiteral("\u22121.00"));
}

// 0.6301 and 0.4651 are shown as 0.63 and 0.47, which differ by 0.16, though the figures differ by
// 0.165.
TEST(WhatIfText, DifferencesOfRatiosAddUpAsTheyAreShown)
{
    const QuantityText english{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    const ComparedValue ratio{.figure = ComparedFigure::fatigueRatioIntegral,
                              .value = Amount{0.4651, Unit::none},
                              .difference = 0.4651 - 0.6301};
    EXPECT_EQ(differenceText(ratio, english), QStringLiteral("\u22120.16"));
    const ComparedValue alike{.figure = ComparedFigure::fatigueRatioPeak,
                              .value = Amount{0.6349, Unit::none},
                              .difference = 0.004};
    EXPECT_EQ(differenceText(alike, english), QStringLiteral("same"));
}

TEST_F(WhatIfVariants, SayWhatTheBlockHasWhereTheyDiffer)
{
    open(tenOnThirtyOff());
    enter(1, Field::offTime, QStringLiteral("45"));
    const QuantityBox& changed = box(1, Field::offTime);
    EXPECT_EQ(changed.accessibleDescription(), QStringLiteral("was 30\u00A0s"));
    EXPECT_EQ(box(0, Field::offTime).accessibleDescription(), QString());
    EXPECT_FALSE(dialog->findChild<QuantityBox*>(cellName(1, Field::lastToleratedAmplitude)))
        << "what was found with the patient is not tried";
    click("reset-1");
    EXPECT_EQ(changed.count(), 30'000);
    enter(1, Field::offTime, QStringLiteral("x"));
    EXPECT_TRUE(changed.hasProblem());
    click("reset-1");
    EXPECT_FALSE(changed.hasProblem());
    EXPECT_EQ(changed.text(), QStringLiteral("30\u00A0s"));
}

TEST_F(WhatIfVariants, NeverCompareFatigueOfAnotherAmplitude)
{
    open(tenOnThirtyOff());
    enter(0, Field::offTime, QStringLiteral("45"));
    enter(0, Field::amplitudeCeiling, QStringLiteral("30"));
    ASSERT_TRUE(comesToSay("whatIfModel", QStringLiteral("A: Amplitude differs")));
    EXPECT_EQ(figure(1, ComparedFigure::fatigueRatioIntegral), QStringLiteral("—"));
    EXPECT_TRUE(said("variantForceSentence").contains(QStringLiteral("Amplitude differs")));
    click("findRatio"); // for A, which was changed last
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("A: Amplitude differs")));
    enter(1, Field::pulseFrequency, QStringLiteral("30"));
    ASSERT_TRUE(comesToSay("whatIfModel", QStringLiteral("B: Pulse frequency differs")));
    enter(2, Field::phaseDuration, QStringLiteral("200"));
    ASSERT_TRUE(comesToSay("whatIfModel", QStringLiteral("C: Phase duration differs")));
}

TEST_F(WhatIfVariants, DrawTheCurvesOfThoseThatAreCompared)
{
    open(tenOnThirtyOff());
    enter(0, Field::offTime, QStringLiteral("20"));
    enter(1, Field::offTime, QStringLiteral("60"));
    enter(2, Field::pulseFrequency, QStringLiteral("30"));
    const ChartView& chart = field<ChartView>("variantChart");
    ASSERT_TRUE(QTest::qWaitFor([&] { return chart.spec().lines.size() == 3; }));
    const ChartSpec& spec = chart.spec();
    EXPECT_EQ(spec.lines[0].kind, ChartLine::Kind::current);
    EXPECT_EQ(spec.lines[1].kind, ChartLine::Kind::comparison);
    EXPECT_NE(spec.lines[1].dash, spec.lines[2].dash) << "black and white tell them apart";
    // 40 contractions of 30 s, 18 of 70 s (17 × 70 + 10 = 1200).
    EXPECT_EQ(spec.lines[1].points.size(), 40);
    EXPECT_EQ(spec.lines[2].points.size(), 18);
    EXPECT_EQ(spec.table.columns.size(), 4);
    EXPECT_EQ(spec.table.rows.size(), 40U);
    EXPECT_TRUE(spec.spoken.contains(QStringLiteral("model, group values, not this patient")));
}

TEST_F(WhatIfVariants, SayWhatIsMissing)
{
    Block block = tenOnThirtyOff();
    block.sites.front().pads.clear();
    open(block);
    EXPECT_EQ(figure(0, ComparedFigure::phaseCharge), QStringLiteral("—"));
    EXPECT_TRUE(said("whatIfLimits").contains(QStringLiteral("No dose without the pads")));
    block = tenOnThirtyOff();
    block.sites.front().settings.offTime = 0s; // continuous
    open(block);
    ASSERT_TRUE(comesToSay("whatIfModel", QStringLiteral("a value of the block stops it")));
    block = tenOnThirtyOff();
    Settings& bursts = block.sites.front().settings;
    bursts.waveform = Waveform::kilohertzBursts;
    bursts.carrierFrequency = 2500_Hz_carrier;
    bursts.burstDuty = 20_percent_burst;
    open(block, aFullUnit());
    ASSERT_TRUE(comesToSay("whatIfModel", QStringLiteral("The model only compares")));
    enter(0, Field::offTime, QStringLiteral("60"));
    ASSERT_TRUE(comesToSay("whatIfModel", QStringLiteral("does not know these settings")));
    EXPECT_EQ(figure(0, ComparedFigure::contractionsCompleted), QStringLiteral("30"));
}

TEST_F(WhatIfVariants, SayWhereAChartCouldNotBeSaved)
{
    open(tenOnThirtyOff());
    enter(0, Field::offTime, QStringLiteral("60"));
    ASSERT_TRUE(ratiosCome(1));
    auto& sentence = field<QLabel>("variantChartSaid");
    EXPECT_FALSE(sentence.isVisible());
    practice.prompts().table = practice.temp().folder() + QStringLiteral("/nowhere/force.csv");
    auto* save = field<ChartView>("variantChart").findChild<QAction*>(QStringLiteral("saveCsv"));
    ASSERT_NE(save, nullptr);
    save->trigger();
    EXPECT_TRUE(sentence.isVisible());
    EXPECT_TRUE(sentence.text().contains(QStringLiteral("force.csv")))
        << sentence.text().toStdString();
}
