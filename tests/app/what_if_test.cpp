// SPDX-License-Identifier: GPL-3.0-or-later
// Variants beside the block in work, in the real window. The block has 10 s on, 30 s off, 20 min: a
// contraction each 40 s, so 30; five days a week make 150. Expected settings are worked by hand
// beside the checks; figures are those of compareSettings().
#include "app/charts/chart_view.h"
#include "app/patient/record_page.h"
#include "app/plan/model_worker.h"
#include "app/plan/plan_page.h"
#include "app/plan/quantity_box.h"
#include "app/plan/what_if_cells.h"
#include "app/plan/what_if_dialog.h"
#include "app/plan/what_if_search.h"
#include "app/words/what_if_text.h"
#include "tests/app/practice_window.h"

#include "db/plans.h"

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QDialog>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QStatusBar>
#include <QTest>

#include <atomic>
#include <gtest/gtest.h>
#include <memory>
#include <thread>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace quadrille::literals;
using namespace std::chrono_literals;

namespace
{

Block tenOnThirtyOff()
{
    Block block = aBlock(aUnit());
    Settings& settings = block.sites.front().settings;
    settings.rampUp = 0s;
    settings.rampDown = 0s;
    settings.onTime = 10s;
    settings.offTime = 30s;
    settings.sessionLength = 20min;
    settings.amplitude = {.lastTolerated = 35_mA, .ceiling = 40_mA};
    return block;
}

QString cellName(std::size_t variant, Field field)
{
    return QStringLiteral("variant-%1-%2").arg(variant).arg(static_cast<int>(field));
}

/// The dialog on a block, and what a person does in it.
class WhatIfVariants : public testing::Test
{
protected:
    void open(const Block& block, Stimulator unit = aUnit())
    {
        unit.rampHabit = RampHabit::includedInOnTime;
        dialog =
            std::make_unique<WhatIfDialog>(practice.services(), block, 0, unit, &practice.window());
        dialog->show();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }
    QuantityBox& box(std::size_t variant, Field field)
    {
        auto* found = dialog->findChild<QuantityBox*>(cellName(variant, field));
        EXPECT_NE(found, nullptr);
        return *found;
    }
    void enter(std::size_t variant, Field field, const QString& value)
    {
        QuantityBox& into = box(variant, field);
        into.setFocus();
        into.selectAll();
        QTest::keyClicks(&into, value);
        QTest::keyClick(&into, Qt::Key_Tab);
    }
    /// Of the block (column 0) or a variant (1 …).
    QString figure(std::size_t column, ComparedFigure figure)
    {
        const QString name =
            QStringLiteral("figure-%1-%2").arg(column).arg(static_cast<int>(figure));
        return column == 0 ? dialog->findChild<QLabel*>(name)->text()
                           : dialog->findChild<FigureCell*>(name)->value();
    }
    QString difference(std::size_t variant, ComparedFigure figure)
    {
        return dialog
            ->findChild<FigureCell*>(
                QStringLiteral("figure-%1-%2").arg(variant + 1).arg(static_cast<int>(figure)))
            ->difference();
    }
    QString said(const char* name)
    {
        const auto* label = dialog->findChild<QLabel*>(QLatin1String(name));
        EXPECT_NE(label, nullptr) << name;
        return label->text();
    }
    template <class Widget>
    Widget& field(const char* name)
    {
        auto* found = dialog->findChild<Widget*>(QLatin1String(name));
        EXPECT_NE(found, nullptr) << name;
        return *found;
    }
    void click(const char* name) { field<QPushButton>(name).click(); }
    /// The model may come after the figures, on a busy machine.
    bool comesToSay(const char* label, const QString& words)
    {
        return QTest::qWaitFor([&] { return said(label).contains(words); });
    }
    bool ratiosCome(std::size_t column)
    {
        return QTest::qWaitFor([&] {
            const QString shown = figure(column, ComparedFigure::fatigueRatioIntegral);
            return shown != QStringLiteral("…") && shown != QStringLiteral("—");
        });
    }

    PracticeWindow practice;
    std::unique_ptr<WhatIfDialog> dialog;
};

} // namespace

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

TEST_F(WhatIfVariants, FitFifteenMinutesWithTheSameContractions)
{
    // 30 contractions of 10 s leave 600 s for 29 rests: 20 s. 880 s; the timer's next is 15 min.
    open(tenOnThirtyOff());
    QuantityBox& length = field<QuantityBox>("wishedLength");
    length.setFocus();
    length.selectAll();
    QTest::keyClicks(&length, QStringLiteral("15"));
    QTest::keyClick(&length, Qt::Key_Return);
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("contractions 30")));
    EXPECT_EQ(box(0, Field::offTime).count(), 20'000);
    EXPECT_EQ(box(0, Field::sessionLength).count(), 900'000);
}

TEST_F(WhatIfVariants, FitFifteenMinutesWithTheSameTotalOnTime)
{
    // 300 s of on time are the same 30 contractions of 10 s.
    open(tenOnThirtyOff());
    field<QuantityBox>("wishedLength").setCount(900'000);
    field<QComboBox>("keptDose").setCurrentIndex(1);
    click("findLength");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("contractions 30")));
    EXPECT_EQ(box(0, Field::offTime).count(), 20'000);
}

TEST_F(WhatIfVariants, GiveTheSessionForTwentyContractions)
{
    // 19 × 40 + 10 = 770 s; the timer's next minute is 13.
    open(tenOnThirtyOff());
    box(2, Field::onTime).setFocus(); // variant C is in work
    field<QSpinBox>("wishedContractions").setValue(20);
    click("findContractions");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("C: ")));
    EXPECT_EQ(box(2, Field::sessionLength).count(), 780'000);
    EXPECT_EQ(box(2, Field::offTime).count(), 30'000);
    EXPECT_EQ(box(0, Field::sessionLength).count(), 1'200'000) << "A stays as it is";
}

TEST_F(WhatIfVariants, KeepTheFatigueRatioByOffTime)
{
    const Block block = tenOnThirtyOff();
    open(block);
    field<QDoubleSpinBox>("wishedRatio").setValue(0.7);
    click("findRatio");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("A: Off time")));
    // Against trying the off times of the unit around it; its steps are whole seconds or less.
    const auto found = box(0, Field::offTime).count();
    ASSERT_TRUE(found);
    const auto step = aUnit().offTime.step.count();
    FatigueMemory memory;
    const auto ratioAt = [&](std::int64_t offTime) {
        Settings settings = block.sites.front().settings;
        settings.offTime = Milliseconds(offTime);
        return memory.predict(settings, RampHabit::includedInOnTime)
            ->lastToFirst->forceTimeIntegral;
    };
    EXPECT_GE(ratioAt(*found), 0.7);
    EXPECT_LT(ratioAt(*found - step), 0.7);
    EXPECT_EQ(box(0, Field::sessionLength).count(), 1'200'000);
}

TEST_F(WhatIfVariants, SayWhyNoSettingDoesIt)
{
    open(tenOnThirtyOff());
    field<QuantityBox>("wishedLength").setCount(300'000); // 300 s of on time alone fill 5 min
    click("findLength");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("shortest off time")));
    field<QSpinBox>("wishedContractions").setValue(9999);
    click("findContractions");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("session timer of the unit ends at")));
    field<QDoubleSpinBox>("wishedRatio").setValue(1.0);
    click("findRatio");
    ASSERT_TRUE(
        comesToSay("searchAnswer", QStringLiteral("model, group values, not this patient")));
    EXPECT_EQ(box(0, Field::offTime).count(), 30'000) << "a refusal changes nothing";
}

TEST_F(WhatIfVariants, SayThatAFixedOffTimeCannotDoIt)
{
    Stimulator unit = aUnit();
    unit.offTime = {30s, 30s, 1s, 30s};
    open(tenOnThirtyOff(), unit);
    field<QDoubleSpinBox>("wishedRatio").setValue(1.0);
    click("findRatio");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("off time of this unit is fixed")));
    EXPECT_TRUE(box(0, Field::offTime).isReadOnly());
}

TEST_F(WhatIfVariants, NeverCompareFatigueOfAnotherAmplitude)
{
    open(tenOnThirtyOff());
    enter(0, Field::offTime, QStringLiteral("45"));
    enter(0, Field::amplitudeCeiling, QStringLiteral("30"));
    ASSERT_TRUE(comesToSay("whatIfModel", QStringLiteral("A: Amplitude differs")));
    EXPECT_EQ(figure(1, ComparedFigure::fatigueRatioIntegral), QStringLiteral("—"));
    EXPECT_TRUE(said("variantForceSentence").contains(QStringLiteral("Amplitude differs")));
    click("findRatio");
    ASSERT_TRUE(comesToSay("searchAnswer", QStringLiteral("Amplitude differs")));
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
    ASSERT_TRUE(comesToSay("whatIfModel", QStringLiteral("does not know these settings")));
    EXPECT_EQ(figure(0, ComparedFigure::contractionsCompleted), QStringLiteral("30"));
}

TEST_F(WhatIfVariants, AreAdoptedWithAReasonOnly)
{
    open(tenOnThirtyOff());
    click("adopt");
    EXPECT_TRUE(said("whatIfProblem").contains(QStringLiteral("is as the block")));
    enter(0, Field::offTime, QStringLiteral("0"));
    click("adopt");
    EXPECT_TRUE(said("whatIfProblem").contains(QStringLiteral("can’t be run")));
    enter(0, Field::offTime, QStringLiteral("x"));
    click("adopt");
    EXPECT_TRUE(said("whatIfProblem").contains(QStringLiteral("is no value")));
    enter(0, Field::offTime, QStringLiteral("45"));
    click("adopt");
    EXPECT_TRUE(said("whatIfProblem").contains(QStringLiteral("The reason is empty")));
    EXPECT_EQ(dialog->result(), 0);
    typeInto(&field<QLineEdit>("adoptReason"), QStringLiteral("tires less"));
    click("adopt");
    EXPECT_EQ(dialog->result(), QDialog::Accepted);
    EXPECT_EQ(dialog->reason(), QStringLiteral("tires less"));
    EXPECT_EQ(dialog->variant().sites.front().settings.offTime, 45s);
}

namespace
{

/// The window on a saved draft of one block.
class AdoptedVariant : public testing::Test
{
protected:
    AdoptedVariant()
    {
        Draft saved = aDraft(practice.ids());
        saved.blocks = {tenOnThirtyOff()};
        must(practice.store().write(author(), "save draft", [&](db::Writing& writing) {
            return db::saveDraft(writing, saved);
        }));
        openRecord();
    }
    void openRecord()
    {
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        practice.window().activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&practice.window()));
    }
    PlanPage& page() { return practice.window().recordPage().planPage(); }
    PlanDraft& draft() { return page().draft(); }
    Milliseconds offTime() { return draft().block()->sites.front().settings.offTime; }
    static QString focused()
    {
        const QWidget* widget = QApplication::focusWidget();
        return widget != nullptr ? widget->objectName() : QString();
    }
    static void press(Qt::Key key) { QTest::keyClick(QApplication::focusWidget(), key); }
    static void go(const QString& name)
    {
        for (int presses = 0; presses < 120 && focused() != name; ++presses) {
            press(Qt::Key_Tab);
        }
        EXPECT_EQ(focused(), name) << "Tab does not reach it";
    }
    static void type(const QString& name, const QString& value)
    {
        go(name);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(QApplication::focusWidget(), value);
    }
    /// With the keyboard alone: off time of variant A, the reason, Return.
    void adopt(const QString& seconds, const QString& reason)
    {
        onNextDialog([=](QDialog&) {
            type(cellName(0, Field::offTime), seconds);
            type(QStringLiteral("adoptReason"), reason);
            press(Qt::Key_Return);
        });
        QTest::keyClick(&practice.window(), Qt::Key_W, Qt::ControlModifier | Qt::ShiftModifier);
    }
    QString proposedReason()
    {
        QString reason;
        onNextDialog([&reason](QDialog& dialog) {
            reason = dialog.findChild<QPlainTextEdit*>(QStringLiteral("reason"))->toPlainText();
            dialog.reject();
        });
        page().issue();
        return reason;
    }

    PracticeWindow practice;
};

} // namespace

TEST_F(AdoptedVariant, ChangesTheBlockAsOneStepAndGivesTheReasonOfThePlan)
{
    adopt(QStringLiteral("45"), QStringLiteral("tires less"));
    EXPECT_EQ(offTime(), 45s);
    EXPECT_EQ(proposedReason(), QStringLiteral("tires less"));
    adopt(QStringLiteral("60"), QStringLiteral("still too tired"));
    EXPECT_EQ(proposedReason(), QStringLiteral("tires less; still too tired"));
    draft().undoStack().undo();
    EXPECT_EQ(offTime(), 45s);
    EXPECT_EQ(proposedReason(), QStringLiteral("tires less"));
    draft().undoStack().undo();
    EXPECT_EQ(offTime(), 30s);
    EXPECT_EQ(proposedReason(), QString());
    EXPECT_FALSE(draft().isChanged());
}

TEST_F(AdoptedVariant, KeepsItsReasonAcrossARestart)
{
    adopt(QStringLiteral("45"), QStringLiteral("tires less"));
    page().keepNow();
    practice.crashAndStartAgain();
    openRecord();
    EXPECT_EQ(offTime(), 45s);
    EXPECT_EQ(proposedReason(), QStringLiteral("tires less"));
    page().saveDraft();
    practice.crashAndStartAgain();
    openRecord();
    EXPECT_EQ(proposedReason(), QStringLiteral("tires less"));
}

TEST_F(AdoptedVariant, NeedsAUnitABlockAndASite)
{
    const auto sentence = [this] {
        QString heard;
        QObject context;
        QObject::connect(&page(), &PlanPage::said, &context,
                         [&heard](const QString& said) { heard = said; });
        page().askWhatIf();
        return heard;
    };
    draft().removeSite(0);
    EXPECT_TRUE(sentence().startsWith(QStringLiteral("Add a site first")));
    draft().removeBlock(0);
    EXPECT_TRUE(sentence().startsWith(QStringLiteral("Add a block first")));
    draft().takeStimulator(StimulatorId(999));
    EXPECT_TRUE(sentence().startsWith(QStringLiteral("Choose the patient’s stimulator first")));
}

TEST(WhatIfPanel, OffersToStopASearchThatGoesOn)
{
    const QuantityText text{QLocale(QLocale::English, QLocale::UnitedKingdom)};
    const Block block = tenOnThirtyOff();
    WhatIfSearch panel({block, {block, block, block}, 0, aUnit()}, text, nullptr);
    panel.show();
    auto* stop = panel.findChild<QPushButton*>(QStringLiteral("stopSearch"));
    int stops = 0;
    QObject::connect(&panel, &WhatIfSearch::stopRequested, &panel, [&stops] { ++stops; });
    EXPECT_FALSE(stop->isVisible());
    panel.showPending();
    ASSERT_TRUE(QTest::qWaitFor([&] { return stop->isVisible(); }));
    stop->click();
    EXPECT_EQ(stops, 1);
    panel.showAnswer(QStringLiteral("Stopped"));
    EXPECT_FALSE(stop->isVisible());
}

TEST(ModelWorker, StopsTheJobBeforeAndDeliversTheLastOnly)
{
    ModelWorker worker(nullptr);
    std::atomic<bool> started = false;
    QStringList delivered;
    worker.ask([&](ModelMemory&, const std::stop_token& stop) -> ModelWorker::Delivery {
        started = true;
        while (!stop.stop_requested()) {
            std::this_thread::yield();
        }
        return [&delivered] { delivered.append(QStringLiteral("first")); };
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return started.load(); }));
    worker.ask([&](ModelMemory&, const std::stop_token&) -> ModelWorker::Delivery {
        return [&delivered] { delivered.append(QStringLiteral("second")); };
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !delivered.isEmpty(); }));
    QApplication::processEvents();
    EXPECT_EQ(delivered, QStringList{QStringLiteral("second")});
}
