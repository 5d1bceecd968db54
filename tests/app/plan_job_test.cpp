// SPDX-License-Identifier: GPL-3.0-or-later
// The main job in the real window: add a patient, plan a block, see the figures, issue, print.
#include "app/caseload/caseload_page.h"
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/plan/quantity_box.h"
#include "tests/app/practice_window.h"

#include "db/courses.h"

#include <QAction>
#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QProcess>
#include <QPushButton>
#include <QSpinBox>
#include <QTest>

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

QString settingName(Field field)
{
    return QStringLiteral("setting-%1").arg(static_cast<int>(field));
}

/// The window with the patient's record open on the Plan page.
class PlanJob : public testing::Test
{
protected:
    void openRecord()
    {
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
    }

    void chooseUnit()
    {
        auto* units = practice.find<QComboBox>("stimulator");
        units->setFocus();
        QTest::keyClick(units, Qt::Key_Down);
        if (units->currentIndex() != 0) {
            units->setCurrentIndex(0);
        }
        emit units->activated(0);
    }

    void addBlockWithSite(const QString& muscle)
    {
        press(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
        addSite(muscle);
    }

    void addSite(const QString& muscle)
    {
        onNextDialog([muscle](QDialog& dialog) {
            typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("muscle")), muscle);
            QTest::keyClick(&dialog, Qt::Key_Return);
        });
        QTest::mouseClick(practice.find<QPushButton>("addSite"), Qt::LeftButton);
    }

    void enter(Field field, const QString& value)
    {
        auto* box = practice.find<QuantityBox>(settingName(field).toLatin1().constData());
        ASSERT_NE(box, nullptr);
        box->setFocus();
        box->selectAll();
        QTest::keyClicks(box, value);
        QTest::keyClick(box, Qt::Key_Tab);
    }

    /// A key of the menus. The window is brought to the front first: a dialog may have been there.
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers)
    {
        practice.window().activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&practice.window()));
        QTest::keyClick(&practice.window(), key, modifiers);
    }

    QString figure(const char* name) { return practice.find<QLabel>(name)->text(); }

    void issue(const QString& reason)
    {
        onNextDialog([reason](QDialog& dialog) {
            typeInto(dialog.findChild<QPlainTextEdit*>(QStringLiteral("reason")), reason);
            QTest::mouseClick(dialog.findChild<QPushButton*>(QStringLiteral("save")),
                              Qt::LeftButton);
        });
        QTest::mouseClick(practice.find<QPushButton>("issuePlan"), Qt::LeftButton);
    }

    PracticeWindow practice;
};

} // namespace

// Common practice, no source: 50 Hz, 4 s on, 12 s off, 59 min with the ramps inside the on time.
// 221 cycles of 16 s leave 4 s, one whole on phase.
TEST_F(PlanJob, FiguresFollowWhatIsTyped)
{
    openRecord();
    chooseUnit();
    addBlockWithSite(QStringLiteral("vastus lateralis"));
    enter(Field::pulseFrequency, QStringLiteral("50"));
    enter(Field::onTime, QStringLiteral("4"));
    enter(Field::offTime, QStringLiteral("12"));
    enter(Field::sessionLength, QStringLiteral("59"));
    EXPECT_EQ(figure("contractions"), QStringLiteral("222"));
    EXPECT_EQ(figure("dutyCycle"), QStringLiteral("25\u00A0%"));
    EXPECT_EQ(figure("offOnRatio"), QStringLiteral("3\u00A0:\u00A01"));
    EXPECT_EQ(figure("pulses"), QStringLiteral("44\u00A0400"));
    enter(Field::offTime, QStringLiteral("20"));
    EXPECT_EQ(figure("contractions"), QStringLiteral("148"))
        << "147 cycles of 24 s leave 12 s, a whole on phase more";
}

TEST_F(PlanJob, AValueOutsideTheUnitIsToldAndMendedByOneAct)
{
    openRecord();
    chooseUnit();
    addBlockWithSite(QStringLiteral("vastus lateralis"));
    enter(Field::phaseDuration, QStringLiteral("420"));
    auto* remedy = practice.find<QPushButton>("warningRemedy");
    ASSERT_TRUE(remedy->isVisible());
    EXPECT_EQ(remedy->text(), QStringLiteral("&Set 400\u00A0µs"));
    QTest::mouseClick(remedy, Qt::LeftButton);
    const PlanDraft& draft = practice.window().recordPage().planPage().draft();
    EXPECT_EQ(countIn(draft.block()->sites.front().settings, Field::phaseDuration), 400);
    EXPECT_FALSE(remedy->isVisible());
}

TEST_F(PlanJob, NonsenseInAFieldIsToldAndChangesNothing)
{
    openRecord();
    chooseUnit();
    addBlockWithSite(QStringLiteral("vastus lateralis"));
    const Draft before = practice.window().recordPage().planPage().draft().draft();
    for (const Field field :
         {Field::pulseFrequency, Field::phaseDuration, Field::onTime, Field::offTime, Field::rampUp,
          Field::rampDown, Field::sessionLength}) {
        auto* box = practice.find<QuantityBox>(settingName(field).toLatin1().constData());
        box->setFocus();
        box->selectAll();
        QTest::keyClicks(box, QStringLiteral("x?y"));
        EXPECT_TRUE(practice.find<QLabel>("warningWhat")->isVisible());
        EXPECT_TRUE(practice.find<QLabel>("warningWhat")->text().contains(QStringLiteral("x?y")))
            << static_cast<int>(field) << ": "
            << practice.find<QLabel>("warningWhat")->text().toStdString();
        QTest::keyClick(box, Qt::Key_Escape);
        EXPECT_FALSE(box->hasProblem());
    }
    EXPECT_EQ(practice.window().recordPage().planPage().draft().draft(), before);
}

TEST_F(PlanJob, UnsavedWorkComesBackAfterACrash)
{
    openRecord();
    chooseUnit();
    addBlockWithSite(QStringLiteral("vastus lateralis"));
    enter(Field::onTime, QStringLiteral("7"));
    // The page keeps what is unsaved soon after the last change.
    const CourseId course = practice.ids().course;
    EXPECT_TRUE(QTest::qWaitFor([&] {
        const auto kept = must(
            practice.store().read([&](db::Reading& r) { return db::unsavedDraftOf(r, course); }));
        return kept && !kept->draft.blocks.empty() &&
               countIn(kept->draft.blocks.front().sites.front().settings, Field::onTime) == 7000;
    }));
    practice.crashAndStartAgain();
    openRecord();
    const PlanDraft& draft = practice.window().recordPage().planPage().draft();
    ASSERT_NE(draft.block(), nullptr);
    EXPECT_EQ(countIn(draft.block()->sites.front().settings, Field::onTime), 7000);
    EXPECT_TRUE(draft.isChanged()) << "it is still unsaved, and Revert drops it";
}

TEST_F(PlanJob, TheDraftIsSavedAndReadAgain)
{
    openRecord();
    chooseUnit();
    addBlockWithSite(QStringLiteral("vastus medialis"));
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_FALSE(practice.window().recordPage().planPage().draft().isChanged())
        << practice.find<QLabel>("said")->text().toStdString();
    practice.crashAndStartAgain();
    openRecord();
    const PlanDraft& draft = practice.window().recordPage().planPage().draft();
    ASSERT_NE(draft.block(), nullptr);
    EXPECT_EQ(draft.block()->sites.front().muscle, "vastus medialis");
    EXPECT_FALSE(draft.isChanged());
}

TEST_F(PlanJob, AnIssuedPlanIsPrintedAndReadsBackFromThePdf)
{
    openRecord();
    chooseUnit();
    addBlockWithSite(QStringLiteral("vastus lateralis"));
    enter(Field::pulseFrequency, QStringLiteral("47"));
    enter(Field::onTime, QStringLiteral("4"));
    enter(Field::offTime, QStringLiteral("12"));
    enter(Field::sessionLength, QStringLiteral("59"));
    // The course began four weeks ago; its blocks are counted from then.
    practice.find<QSpinBox>("weeks")->setValue(8);
    issue(QStringLiteral("first plan after assessment"));
    const auto plans = must(practice.store().read(
        [&](db::Reading& r) { return db::plansOf(r, practice.ids().course); }));
    ASSERT_EQ(plans.size(), 1U);
    EXPECT_EQ(plans.front().reason, "first plan after assessment");
    EXPECT_EQ(plans.front().issuedByName, "Ruta Vennel");
    EXPECT_EQ(practice.window().recordPage().currentPage(), RecordPage::handoutIndex);

    practice.prompts().pdf = practice.temp().folder() + QStringLiteral("/handout.pdf");
    QTest::mouseClick(practice.find<QPushButton>("savePdf"), Qt::LeftButton);
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"),
                 {QStringLiteral("-layout"), *practice.prompts().pdf, QStringLiteral("-")});
    ASSERT_TRUE(reader.waitForFinished());
    ASSERT_EQ(reader.exitCode(), 0) << practice.find<QLabel>("said")->text().toStdString();
    const QString text = QString::fromUtf8(reader.readAllStandardOutput())
                             .replace(noBreakSpace(), QStringLiteral(" "));
    for (const char* expected : {"Agnes Thorley", "47 Hz", "222", "59", "01632 960147"}) {
        EXPECT_TRUE(text.contains(QString::fromUtf8(expected))) << expected << " is not in\n"
                                                                << text.toStdString();
    }
}

TEST_F(PlanJob, ADraftIsNeverPrinted)
{
    openRecord();
    chooseUnit();
    addBlockWithSite(QStringLiteral("vastus lateralis"));
    practice.window().recordPage().showPage(RecordPage::handoutIndex);
    EXPECT_FALSE(practice.find<QPushButton>("savePdf")->isVisible() &&
                 practice.find<QPushButton>("savePdf")->isEnabled());
}

TEST_F(PlanJob, APlanWithAStopCannotBeIssued)
{
    openRecord();
    chooseUnit();
    addBlockWithSite(QStringLiteral("vastus lateralis"));
    enter(Field::onTime, QStringLiteral("2"));
    enter(Field::rampUp, QStringLiteral("5"));
    QString sentence;
    onNextDialog([&](QDialog& dialog) {
        typeInto(dialog.findChild<QPlainTextEdit*>(QStringLiteral("reason")),
                 QStringLiteral("try"));
        QTest::mouseClick(dialog.findChild<QPushButton*>(QStringLiteral("save")), Qt::LeftButton);
        sentence = dialog.findChild<QLabel*>(QStringLiteral("problem"))->text();
        dialog.reject();
    });
    QTest::mouseClick(practice.find<QPushButton>("issuePlan"), Qt::LeftButton);
    EXPECT_TRUE(sentence.contains(QStringLiteral("can’t be issued"))) << sentence.toStdString();
    EXPECT_TRUE(must(practice.store().read([&](db::Reading& r) {
                    return db::plansOf(r, practice.ids().course);
                })).empty());
}

TEST_F(PlanJob, UndoAndRedoWorkFromTheKeyboard)
{
    openRecord();
    chooseUnit();
    addBlockWithSite(QStringLiteral("vastus lateralis"));
    enter(Field::sessionLength, QStringLiteral("59"));
    enter(Field::offTime, QStringLiteral("20"));
    const QString after = figure("contractions");
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_NE(figure("contractions"), after);
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(figure("contractions"), after);
}

TEST_F(PlanJob, CtrlFSearchesFromTheRecord)
{
    openRecord();
    press(Qt::Key_F, Qt::ControlModifier);
    auto* search = practice.window().caseloadPage().findChild<QLineEdit*>();
    ASSERT_NE(search, nullptr);
    EXPECT_TRUE(search->isVisible());
    EXPECT_TRUE(search->hasFocus());
}
