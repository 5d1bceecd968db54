// SPDX-License-Identifier: GPL-3.0-or-later
// Another unit for a course, by keyboard: what it can do instead is shown first, taken as one step,
// and undone.
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "tests/app/practice_window.h"

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QPushButton>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::literals;
using namespace quadrille::tests;
using namespace std::chrono_literals;
using testing::HasSubstr;

namespace
{

/// Its ramps come on top of the on time, and its steps are coarse.
Stimulator coarseUnit()
{
    Stimulator unit = aUnit("Two-channel unit B");
    unit.rampHabit = RampHabit::addedToOnTime;
    unit.phaseDuration = {50_us, 350_us, 25_us, 250_us};
    unit.sessionLength = {5min, 60min, 5min, 20min};
    return unit;
}

class UnitOfACourse : public testing::Test
{
protected:
    UnitOfACourse()
    {
        coarse = must(practice.store().write(author(), "add stimulator", [](db::Writing& writing) {
            return db::addStimulator(writing, coarseUnit());
        }));
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        draft().chooseStimulator(practice.ids().stimulator);
        draft().addBlock();
        Site site = aSite(aUnit());
        site.settings.phaseDuration = 400_us;
        site.settings.onTime = 10s;
        site.settings.offTime = 25s;
        site.settings.rampUp = 2s;
        site.settings.rampDown = 1s;
        site.settings.sessionLength = 16min;
        site.settings.amplitude.ceiling = 60_mA;
        draft().addSite(site);
    }
    PlanDraft& draft() { return practice.window().recordPage().planPage().draft(); }
    const Settings& settings() { return draft().block()->sites.front().settings; }
    /// The next unit in the list, as Down in the box does.
    void chooseNext()
    {
        auto* units = practice.find<QComboBox>("stimulator");
        units->setFocus();
        QTest::keyClick(units, Qt::Key_Down);
    }
    static QString textOf(const QDialog& dialog)
    {
        QStringList all;
        for (const QLabel* label : dialog.findChildren<QLabel*>()) {
            all.append(label->text());
        }
        return all.join(QLatin1Char('\n')).replace(noBreakSpace(), QStringLiteral(" "));
    }

    StimulatorId add(const Stimulator& unit)
    {
        const StimulatorId id =
            must(practice.store().write(author(), "add stimulator", [&](db::Writing& writing) {
                return db::addStimulator(writing, unit);
            }));
        emit practice.services().events.stimulatorsChanged();
        return id;
    }
    static void keepSettings(QDialog& dialog)
    {
        dialog.activateWindow();
        // A dialog counts as active while its parent is, but takes no keys then.
        ASSERT_TRUE(QTest::qWaitFor([&] { return QApplication::activeWindow() == &dialog; }));
        QTest::keyClick(&dialog, Qt::Key_K, Qt::AltModifier);
    }

    PracticeWindow practice;
    StimulatorId coarse{0};
};

} // namespace

// By hand: the on phase of 10 s holds ramps of 2 and 1 s, so that a unit which adds them is set to
// 7 s. 400 goes to 350 µs, 16 to 15 min (halves go down). 16 min: 27 cycles of 35 s and 15 s, 28
// contractions; 15 min: 25 cycles and 25 s, 26. 60 mA × 400 µs = 24 µC, × 350 µs = 21 µC.
TEST_F(UnitOfACourse, ShowsWhatAnotherUnitCanDoInsteadAndTakesItAsOneStep)
{
    const Draft before = draft().draft();
    std::string shown;
    onNextDialog([&](QDialog& dialog) {
        shown = textOf(dialog).toStdString();
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    chooseNext();
    for (const char* told : {"On time\n10 s\n7 s\nkeeps the on phase",
                             "Phase duration\n400 µs\n350 µs\noutside the unit’s range",
                             "Session\n16 min\n15 min\nbetween two steps", "Contractions\n28\n26",
                             "Phase charge\n24.0 µC\n21.0 µC"}) {
        EXPECT_THAT(shown, HasSubstr(told));
    }
    EXPECT_THAT(shown, testing::Not(HasSubstr("Duty cycle"))) << "it stays";
    EXPECT_EQ(draft().draft().stimulator, coarse);
    EXPECT_EQ(settings().onTime, 7s);
    EXPECT_EQ(settings().phaseDuration, 350_us);
    EXPECT_EQ(settings().sessionLength, 15min);
    EXPECT_TRUE(stimulatorFindings(settings(), *draft().stimulator()).empty());
    draft().undoStack().undo();
    EXPECT_EQ(draft().draft(), before);
}

TEST_F(UnitOfACourse, MayKeepTheSettingsAndFitThemLaterFromTheStrip)
{
    onNextDialog(keepSettings);
    chooseNext();
    EXPECT_EQ(draft().draft().stimulator, coarse);
    EXPECT_EQ(settings().phaseDuration, 400_us);
    auto* fit = practice.find<QPushButton>("warningFit");
    ASSERT_TRUE(fit->isVisible());
    practice.window().activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&practice.window()));
    onNextDialog([](QDialog& dialog) {
        EXPECT_FALSE(dialog.findChild<QPushButton*>(QStringLiteral("keepSettings"))->isVisible());
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    QTest::keyClick(&practice.window(), Qt::Key_F, Qt::AltModifier);
    // The button shows for a moment that its key was pressed before it acts.
    ASSERT_TRUE(QTest::qWaitFor([&] { return settings().phaseDuration != 400_us; }));
    EXPECT_EQ(settings().phaseDuration, 350_us);
    EXPECT_EQ(settings().sessionLength, 15min);
    EXPECT_EQ(settings().onTime, 10s) << "it was meant for this unit by then";
    EXPECT_FALSE(fit->isVisible());
}

TEST_F(UnitOfACourse, KeepsTheWaveformTooWhereTheUnitDoesNotGiveIt)
{
    Stimulator bursts = aFullUnit("Unit of bursts");
    bursts.waveforms = {Waveform::kilohertzBursts};
    const StimulatorId id = add(bursts);
    draft().takeStimulator(coarse);
    const std::vector<Block> before = draft().draft().blocks;
    onNextDialog(keepSettings);
    chooseNext();
    EXPECT_EQ(draft().draft().stimulator, id);
    EXPECT_EQ(draft().draft().blocks, before);
}

TEST_F(UnitOfACourse, OneOfDirectCurrentTurnsNoSiteIntoDirectCurrent)
{
    Stimulator direct = aUnit("Unit of direct current");
    direct.waveforms = {Waveform::directCurrent};
    const StimulatorId id = add(direct);
    draft().takeStimulator(coarse);
    const std::vector<Block> before = draft().draft().blocks;
    chooseNext(); // no dialog
    EXPECT_EQ(draft().draft().stimulator, id);
    EXPECT_EQ(draft().draft().blocks, before);
}

TEST_F(UnitOfACourse, EscLeavesTheOldUnit)
{
    const Draft before = draft().draft();
    onNextDialog([](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Escape); });
    chooseNext();
    EXPECT_EQ(draft().draft(), before);
    EXPECT_EQ(practice.find<QComboBox>("stimulator")->currentText(),
              QStringLiteral("Two-channel unit A"));
}

TEST_F(UnitOfACourse, OneThatWillNotDoSaysWhyWhereItIsChosen)
{
    Stimulator relief = aUnit("Z pain-relief unit");
    relief.hasWorkRestCycles = false;
    must(practice.store().write(author(), "add stimulator", [&](db::Writing& writing) {
        return db::addStimulator(writing, relief);
    }));
    emit practice.services().events.stimulatorsChanged();
    auto* units = practice.find<QComboBox>("stimulator");
    EXPECT_EQ(units->itemText(2), QStringLiteral("Z pain-relief unit (will not do)"));
    draft().chooseStimulator(coarse);
    EXPECT_FALSE(practice.find<QLabel>("unitVerdict")->isVisible());
    chooseNext();
    auto* verdict = practice.find<QLabel>("unitVerdict");
    EXPECT_TRUE(verdict->isVisible());
    EXPECT_THAT(verdict->text().toStdString(), HasSubstr("Will not do: This stimulator has no on"));
    EXPECT_THAT(practice.find<QLabel>("warningWhat")->text().toStdString(),
                HasSubstr("no on and off times"));
    EXPECT_FALSE(practice.find<QPushButton>("warningFit")->isVisible())
        << "nobody fits a plan to a unit that will not do";
}
