// SPDX-License-Identifier: GPL-3.0-or-later
// Figures and charts of the Plan page follow what is typed. Ratios against the reference table:
// 50 Hz, 4 s on with ramps of 1 s inside, 12 s off, 20 min (case P09): force–time integral 0.6653,
// peak force 0.6749.
#include "app/charts/chart_view.h"
#include "app/patient/record_page.h"
#include "app/plan/chart_pair.h"
#include "app/plan/model_reader.h"
#include "app/plan/plan_page.h"
#include "app/plan/quantity_box.h"
#include "tests/app/practice_window.h"
#include "tests/core/examples.h"

#include "core/course_projection.h"

#include <QLabel>
#include <QTabBar>
#include <QTest>
#include <QToolButton>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace std::chrono_literals;

namespace
{

/// Two blocks alike on vastus medialis, the second in work.
class LiveFigures : public testing::Test
{
protected:
    LiveFigures()
    {
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        draft().chooseStimulator(practice.ids().stimulator);
        draft().addBlock();
        Site site = test::someSite();
        site.settings.rampUp = 1s;
        site.settings.rampDown = 1s;
        site.settings.amplitude.lastTolerated = Amplitude::fromCount(40'000);
        draft().addSite(site);
        draft().addBlock();
    }

    PlanDraft& draft() { return practice.window().recordPage().planPage().draft(); }

    void enter(Field field, const QString& value)
    {
        const QString name = QStringLiteral("setting-%1").arg(static_cast<int>(field));
        auto* box = practice.find<QuantityBox>(name.toLatin1().constData());
        ASSERT_NE(box, nullptr);
        box->setFocus();
        box->selectAll();
        QTest::keyClicks(box, value);
        QTest::keyClick(box, Qt::Key_Tab);
    }

    /// The model may come after the figures, on a busy machine.
    bool comesToSay(const char* label, const QString& words)
    {
        auto* found = practice.find<QLabel>(label);
        return QTest::qWaitFor([&] { return found->text().contains(words); });
    }
    QString said(const char* label) { return practice.find<QLabel>(label)->text(); }
    ChartView& chart(const char* name) { return *practice.find<ChartView>(name); }

    PracticeWindow practice;
};

} // namespace

TEST_F(LiveFigures, ShowTheRatioOfTheBlockBeforeWhereOnlyTheOffTimeDiffers)
{
    ASSERT_TRUE(comesToSay("fatigueRatio", QStringLiteral("0.67, as before")));
    enter(Field::offTime, QStringLiteral("20"));
    ASSERT_TRUE(comesToSay("fatigueRatio", QStringLiteral(", was 0.67")))
        << said("fatigueRatio").toStdString();
    EXPECT_TRUE(said("fatigueRatioPeak").endsWith(QStringLiteral(", was 0.67")));
    EXPECT_GT(said("fatigueRatio").left(4).toDouble(), 0.67) << "more rest";
    EXPECT_FALSE(practice.find<QLabel>("fatigueSentence")->isVisible());
}

TEST_F(LiveFigures, SayWhyThereIsNoRatioWhereTheModelMisleads)
{
    enter(Field::pulseFrequency, QStringLiteral("30"));
    ASSERT_TRUE(comesToSay("fatigueSentence", QStringLiteral("Pulse frequency differs")));
    EXPECT_EQ(said("fatigueRatio"), QStringLiteral("—"));
    EXPECT_FALSE(chart("forceChart").isVisible());
    EXPECT_TRUE(said("forceSentence").contains(QStringLiteral("Pulse frequency differs")));
    EXPECT_FALSE(chart("fatigueChart").isVisible());
    EXPECT_TRUE(practice.find<QLabel>("noWeekFatigue")->isVisible());
    draft().setCurrentBlock(0);
    EXPECT_TRUE(comesToSay("fatigueSentence", QStringLiteral("no block before")));
}

TEST_F(LiveFigures, KeepTheMarkOfTheModelBesideThemAndItsLimitsAtHand)
{
    enter(Field::offTime, QStringLiteral("20"));
    ASSERT_TRUE(comesToSay("fatigueRatio", QStringLiteral("was")));
    auto* limits = practice.find<QLabel>("modelLimitsText");
    EXPECT_FALSE(limits->isVisible());
    auto* more = practice.find<QToolButton>("modelLimits");
    more->setFocus();
    QTest::keyClick(more, Qt::Key_Space);
    EXPECT_TRUE(limits->isVisible());
    EXPECT_TRUE(limits->text().contains(QStringLiteral("not from this patient")));
    EXPECT_TRUE(practice.find<QLabel>("fatigueRatio")
                    ->accessibleDescription()
                    .contains(QStringLiteral("model, group values, not this patient")));
    EXPECT_TRUE(chart("forceChart").spec().spoken.contains(QStringLiteral("not this patient")));
    EXPECT_TRUE(chart("fatigueChart").spec().spoken.contains(QStringLiteral("not this patient")));
}

TEST_F(LiveFigures, TakeTheLimitsOfTheModelAwayWithTheLastSite)
{
    enter(Field::offTime, QStringLiteral("20"));
    ASSERT_TRUE(comesToSay("fatigueRatio", QStringLiteral("was")));
    auto* more = practice.find<QToolButton>("modelLimits");
    auto* limits = practice.find<QLabel>("modelLimitsText");
    more->click();
    ASSERT_TRUE(limits->isVisible());
    draft().removeSite(0);
    EXPECT_FALSE(limits->isVisible());
    EXPECT_FALSE(more->isChecked());
    EXPECT_TRUE(limits->text().isEmpty());
}

TEST_F(LiveFigures, SayWhyThereIsNoRatioWhereTheFormOfThePulseDiffers)
{
    draft().setSetting(Field::interphaseGap, 100);
    ASSERT_TRUE(comesToSay("fatigueSentence", QStringLiteral("form of the pulse differs")));
    EXPECT_EQ(said("fatigueRatio"), QStringLiteral("—"));
    EXPECT_FALSE(chart("fatigueChart").isVisible());
}

TEST_F(LiveFigures, SayThatTheModelTakesNoNoticeOfAmplitude)
{
    draft().setAmplitude(0, Field::lastToleratedAmplitude, 45'000);
    EXPECT_TRUE(comesToSay("fatigueSentence", QStringLiteral("Amplitudes differ too")));
}

// By hand: 2 blocks of 4 weeks, 5 sessions of 75 contractions of 4 s; 40 mA × 300 µs × 200 pulses
// are 2.4 mC a contraction.
TEST_F(LiveFigures, AddUpAllBlocks)
{
    EXPECT_EQ(said("planSessions"), QStringLiteral("40"));
    EXPECT_EQ(said("planContractions"), QStringLiteral("3\u00A0000"));
    EXPECT_EQ(said("planOnTime"), QStringLiteral("3\u00A0h 20\u00A0min"));
    EXPECT_EQ(said("planCharge"), QStringLiteral("7\u00A0200")); // 3000 × 2.4 mC
    enter(Field::sessionLength, QStringLiteral("40"));
    EXPECT_EQ(said("planContractions"), QStringLiteral("4\u00A0500"));
}

TEST_F(LiveFigures, AreThoseOfTheEngine)
{
    enter(Field::offTime, QStringLiteral("20"));
    const Stimulator unit = *draft().stimulator();
    const PlanTotals totals = totalsOf(projectWithoutModel(draft().draft().blocks, unit));
    EXPECT_EQ(said("planContractions"), practice.text().count(totals.dose->contractions));
    EXPECT_EQ(said("planCharge"), practice.text().number(totals.charge->shown(), 0));
    FatigueMemory memory;
    const std::vector<Block>& blocks = draft().draft().blocks;
    const auto steps = fatigueSteps(blocks[1], blocks.data(), unit, memory);
    ASSERT_EQ(steps.size(), 1U);
    ASSERT_TRUE(steps[0].now);
    EXPECT_TRUE(
        comesToSay("fatigueRatio", practice.text().number(steps[0].now->forceTimeIntegral, 2)));
    // By hand: 20 min of 24 s cycles, and the block before with 16 s.
    ASSERT_FALSE(chart("forceChart").spec().bars.empty());
    EXPECT_EQ(chart("forceChart").spec().bars.front().heights.size(), 50U);
    EXPECT_EQ(chart("forceChart").spec().lines.front().points.size(), 75U);
}

TEST_F(LiveFigures, StandOnTheGridsWeeksWithOneCrosshair)
{
    enter(Field::offTime, QStringLiteral("20"));
    ASSERT_TRUE(comesToSay("fatigueRatio", QStringLiteral("was")));
    ChartView& contractions = chart("contractionsChart");
    EXPECT_EQ(contractions.spec().bars[0].heights[0], 375);
    EXPECT_EQ(contractions.spec().bars[0].heights[7], 250) << "50 contractions a session";
    contractions.setFocus();
    QTest::keyClick(&contractions, Qt::Key_Right);
    EXPECT_EQ(chart("fatigueChart").crosshair(), 0U);
    EXPECT_EQ(chart("amplitudeChart").crosshair(), 0U);
    const QString read = said("weekReadout");
    EXPECT_TRUE(read.contains(QStringLiteral("Week 1"))) << read.toStdString();
    EXPECT_TRUE(read.contains(QStringLiteral("375 planned")));
    EXPECT_TRUE(read.contains(QStringLiteral("fatigue ratio 0.67")));
    EXPECT_TRUE(read.contains(QStringLiteral("40\u00A0mA planned")));
    EXPECT_TRUE(
        contractions.accessibleDescription().startsWith(QStringLiteral("Week 1: 375 planned.")));
    QTest::keyClick(&contractions, Qt::Key_Escape);
    EXPECT_FALSE(chart("amplitudeChart").crosshair());
}

TEST_F(LiveFigures, ShareOnePlaceInALowWindow)
{
    auto* tabs = practice.find<QTabBar>("chartTabs");
    EXPECT_FALSE(tabs->isVisible());
    practice.window().resize(1280, 720);
    ASSERT_TRUE(QTest::qWaitFor([&] { return tabs->isVisible(); }));
    // The page lays itself out again after its bar of tabs has come.
    EXPECT_TRUE(QTest::qWaitFor([&] { return chart("cycleChart").isVisible(); }));
    EXPECT_FALSE(chart("forceChart").isVisible());
    tabs->setFocus();
    QTest::keyClick(tabs, Qt::Key_Right);
    EXPECT_FALSE(chart("cycleChart").isVisible());
    EXPECT_TRUE(QTest::qWaitFor([&] { return chart("forceChart").isVisible(); }))
        << "as soon as the model has answered";
}

// By hand: 20 min of 24 s cycles, and the block before with 16 s.
TEST(ModelAnswers, HoldTheForcesOfBothBlocks)
{
    ModelQuestion question;
    question.block = test::someBlock();
    question.before = question.block;
    question.block.sites.front().settings.offTime = 20s;
    question.unit = test::someStimulator();
    ModelMemory memory;
    const ModelAnswer answer = answerTo(question, memory);
    EXPECT_EQ(answer.site, 0U);
    EXPECT_EQ(answer.peaks.size(), 50U);
    EXPECT_EQ(answer.peaksBefore.size(), 75U);
}
