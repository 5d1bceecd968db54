// SPDX-License-Identifier: GPL-3.0-or-later
// The inventory, lending and taking back, by keyboard.
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/print/handout_document.h"
#include "app/print/handout_page.h"
#include "app/print/paper_view.h"
#include "app/stimulator/stimulators_dialog.h"
#include "tests/app/practice_window.h"
#include "tests/support/store_rows.h"

#include "db/courses.h"
#include "db/loans.h"

#include <QAction>
#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableView>
#include <QTest>
#include <QTimer>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using testing::HasSubstr;

namespace
{

LoanUnit unitNumbered(const std::string& number, StimulatorId stimulator)
{
    LoanUnit unit;
    unit.inventoryNumber = number;
    unit.stimulator = stimulator;
    return unit;
}

/// A dialog counts as active while its parent is, but takes no keys then.
void bringToFront(QDialog& dialog)
{
    dialog.activateWindow();
    EXPECT_TRUE(QTest::qWaitFor([&] { return QApplication::activeWindow() == &dialog; }));
}

class LoansWindow : public testing::Test
{
protected:
    /// Opens the window from its menu and runs `inside` in it.
    void openWindow(const std::function<void(QDialog&)>& inside)
    {
        onNextDialog([inside](QDialog& dialog) {
            bringToFront(dialog);
            inside(dialog);
            dialog.reject();
        });
        for (QAction* action : practice.window().findChildren<QAction*>()) {
            if (action->text() == QStringLiteral("&Stimulators and loans…")) {
                action->trigger();
                return;
            }
        }
        ADD_FAILURE() << "no such act in the menus";
    }
    /// Alt and a letter, then what is done in the form that opens. A button shows for a moment that
    /// its key was pressed before it acts.
    static void pressFor(QDialog& dialog, Qt::Key letter,
                         const std::function<void(QDialog&)>& inForm)
    {
        bool opened = false;
        QTest::keyClick(&dialog, letter, Qt::AltModifier);
        QTimer look;
        look.callOnTimeout([&] {
            auto* form = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (form == nullptr || form == &dialog) {
                return;
            }
            look.stop();
            bringToFront(*form);
            inForm(*form);
            opened = true;
        });
        look.start(5);
        EXPECT_TRUE(QTest::qWaitFor(
            [&] { return opened && QApplication::activeModalWidget() == &dialog; }));
        bringToFront(dialog);
    }
    static std::string cell(const QDialog& dialog, int row, int column)
    {
        const auto* table = dialog.findChild<QTableView*>(QStringLiteral("inventory"));
        return table->model()->index(row, column).data().toString().toStdString();
    }
    static bool canBe(const QDialog& dialog, const char* act)
    {
        return dialog.findChild<QPushButton*>(QString::fromLatin1(act))->isEnabled();
    }
    static std::string label(const QDialog& dialog, const char* name)
    {
        return dialog.findChild<QLabel*>(QString::fromLatin1(name))->text().toStdString();
    }
    LoanUnitId addUnit(const LoanUnit& unit)
    {
        return must(practice.store().write(author(), "add unit", [&](db::Writing& writing) {
            return db::addLoanUnit(writing, unit);
        }));
    }

    PracticeWindow practice;
};

} // namespace

TEST_F(LoansWindow, AUnitIsAddedLentAndTakenBackWithKeysAlone)
{
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    openWindow([](QDialog& dialog) {
        EXPECT_THAT(label(dialog, "noUnits"), HasSubstr("Add the first with its inventory number"));
        pressFor(dialog, Qt::Key_N, [](QDialog& form) {
            QTest::keyClick(&form, Qt::Key_Return);
            EXPECT_THAT(label(form, "problem"), HasSubstr("inventory number is empty"));
            typeInto(form.findChild<QLineEdit*>(QStringLiteral("inventoryNumber")),
                     QStringLiteral("U-03"));
            auto* kind = form.findChild<QComboBox*>(QStringLiteral("unitStimulator"));
            kind->setFocus();
            QTest::keyClick(kind, Qt::Key_Down);
            typeInto(form.findChild<QLineEdit*>(QStringLiteral("nextCheck")),
                     QStringLiteral("2026-03-10"));
            QTest::keyClick(&form, Qt::Key_Return);
        });
        EXPECT_EQ(cell(dialog, 0, 0), "U-03");
        EXPECT_EQ(cell(dialog, 0, 2), "here");
        EXPECT_THAT(cell(dialog, 0, 5), HasSubstr("overdue"));
        EXPECT_FALSE(canBe(dialog, "takeUnitBack"));
        pressFor(dialog, Qt::Key_L, [](QDialog& form) {
            EXPECT_THAT(form.findChild<QComboBox*>(QStringLiteral("loanCourse"))
                            ->currentText()
                            .toStdString(),
                        HasSubstr("Agnes Thorley (1001)"))
                << "the record that is open";
            EXPECT_THAT(label(form, "loanRemarks"), HasSubstr("safety check of this unit is 2"));
            typeInto(form.findChild<QLineEdit*>(QStringLiteral("dueOn")),
                     QStringLiteral("2026-03-11"));
            QTest::keyClick(&form, Qt::Key_Return);
            EXPECT_THAT(label(form, "problem"), HasSubstr("due before it is lent"));
            typeInto(form.findChild<QLineEdit*>(QStringLiteral("dueOn")),
                     QStringLiteral("2026-04-20"));
            QTest::keyClick(&form, Qt::Key_Return);
        });
        EXPECT_EQ(cell(dialog, 0, 2), "Agnes Thorley (1001), Knee replacement");
        EXPECT_EQ(cell(dialog, 0, 3), "12 Mar 2026");
        EXPECT_EQ(cell(dialog, 0, 4), "20 Apr 2026");
        EXPECT_FALSE(canBe(dialog, "lendUnit")) << "it is out";
    });
    const auto lent = [&] {
        return must(practice.store().read(
            [&](db::Reading& reading) { return db::unitsLentTo(reading, practice.ids().course); }));
    };
    ASSERT_EQ(lent().size(), 1U);
    EXPECT_EQ(lent().front().loan->lentByName, "Ruta Vennel");
    openWindow([](QDialog& dialog) {
        pressFor(dialog, Qt::Key_D, [](QDialog& form) {
            typeInto(form.findChild<QLineEdit*>(QStringLiteral("dueOn")),
                     QStringLiteral("2026-05-04"));
            QTest::keyClick(&form, Qt::Key_Return);
        });
        EXPECT_EQ(cell(dialog, 0, 4), "4 May 2026");
        pressFor(dialog, Qt::Key_T, [](QDialog& form) { QTest::keyClick(&form, Qt::Key_Return); });
        EXPECT_EQ(cell(dialog, 0, 2), "here");
        EXPECT_THAT(
            dialog.findChild<QPlainTextEdit*>(QStringLiteral("pastLoans"))
                ->toPlainText()
                .toStdString(),
            HasSubstr("12 Mar 2026 to 12 Mar 2026: Agnes Thorley (1001), Knee replacement · "
                      "lent by Ruta Vennel · taken back by Ruta Vennel"));
    });
    EXPECT_TRUE(lent().empty());
}

TEST_F(LoansWindow, AUnitOfAnotherKindIsToldOfAndMayBeLentAllTheSame)
{
    anIssuedPlan(practice.store(), practice.ids());
    const StimulatorId other =
        must(practice.store().write(author(), "add stimulator", [](db::Writing& writing) {
            return db::addStimulator(writing, aUnit("Two-channel unit B"));
        }));
    addUnit(unitNumbered("U-09", other));
    openWindow([](QDialog& dialog) {
        pressFor(dialog, Qt::Key_L, [](QDialog& form) {
            QTest::keyClick(&form, Qt::Key_Return);
            EXPECT_THAT(label(form, "problem"), HasSubstr("Choose from the list"));
            auto* course = form.findChild<QComboBox*>(QStringLiteral("loanCourse"));
            course->setFocus();
            QTest::keyClick(course, Qt::Key_Down);
            EXPECT_THAT(label(form, "loanRemarks"), HasSubstr("of another kind"));
            QTest::keyClick(&form, Qt::Key_Return);
        });
        EXPECT_THAT(cell(dialog, 0, 2), HasSubstr("Agnes Thorley"));
    });
}

TEST_F(LoansWindow, OfTwoCoursesThatReadAlikeTheChosenOneGetsTheUnit)
{
    const CourseId second =
        must(practice.store().write(author(), "add course", [&](db::Writing& writing) {
            return db::addCourse(writing, aCourse(practice.ids().patient));
        }));
    addUnit(unitNumbered("U-03", practice.ids().stimulator));
    openWindow([](QDialog& dialog) {
        pressFor(dialog, Qt::Key_L, [](QDialog& form) {
            auto* course = form.findChild<QComboBox*>(QStringLiteral("loanCourse"));
            course->setFocus();
            QTest::keyClick(course, Qt::Key_Down);
            QTest::keyClick(course, Qt::Key_Down);
            EXPECT_EQ(course->currentText().toStdString(),
                      "Agnes Thorley (1001), Knee replacement, from 9 Feb 2026");
            QTest::keyClick(&form, Qt::Key_Return);
        });
    });
    const auto lent = must(practice.store().read(
        [&](db::Reading& reading) { return db::unitsLentTo(reading, second); }));
    EXPECT_EQ(lent.size(), 1U);
}

TEST_F(LoansWindow, LoansThatCannotBeReadAreNotCalledNone)
{
    const LoanUnitId unit = addUnit(unitNumbered("U-01", practice.ids().stimulator));
    addUnit(unitNumbered("U-02", practice.ids().stimulator));
    must(practice.store().write(author(), "lend", [&](db::Writing& writing) {
        Loan loan;
        loan.unit = unit;
        loan.course = practice.ids().course;
        loan.lentOn = day(2026, 2, 9);
        db::lend(writing, loan);
    }));
    openWindow([this](QDialog& dialog) {
        const auto past = [&] {
            return dialog.findChild<QPlainTextEdit*>(QStringLiteral("pastLoans"))
                ->toPlainText()
                .toStdString();
        };
        auto* table = dialog.findChild<QTableView*>(QStringLiteral("inventory"));
        table->setFocus();
        QTest::keyClick(table, Qt::Key_Down);
        EXPECT_THAT(past(), HasSubstr("never lent"));
        runDump(practice.temp().file(), "DROP TABLE loan;\n");
        QTest::keyClick(table, Qt::Key_Up);
        EXPECT_THAT(past(), testing::Not(HasSubstr("never lent")));
        EXPECT_THAT(past(), HasSubstr("Unit U-01\nThe practice file"));
    });
}

TEST_F(LoansWindow, WhatIsOverdueStandsFirst)
{
    const LoanUnitId second = addUnit(unitNumbered("U-02", practice.ids().stimulator));
    addUnit(unitNumbered("U-01", practice.ids().stimulator));
    must(practice.store().write(author(), "lend", [&](db::Writing& writing) {
        Loan loan;
        loan.unit = second;
        loan.course = practice.ids().course;
        loan.lentOn = day(2026, 2, 9);
        loan.dueOn = day(2026, 3, 9);
        db::lend(writing, loan);
    }));
    openWindow([](QDialog& dialog) {
        EXPECT_EQ(cell(dialog, 0, 0), "U-02");
        EXPECT_THAT(cell(dialog, 0, 4), HasSubstr("3 days overdue"));
        EXPECT_EQ(cell(dialog, 1, 0), "U-01");
    });
}

TEST_F(LoansWindow, TheHeaderAndTheHandoutNameTheUnit)
{
    must(practice.store().write(author(), "issue plan", [&](db::Writing& writing) {
        Draft draft = aDraft(practice.ids());
        draft.blocks[0].weeks = 8; // the fifth is under way
        return db::issuePlan(writing, draft,
                             {.fromDate = day(2026, 2, 9),
                              .reason = "first plan",
                              .issuedBy = practice.ids().practitioner},
                             day(2026, 3, 12));
    }));
    const LoanUnitId unit = addUnit(unitNumbered("U-03", practice.ids().stimulator));
    practice.window().openPatient(practice.ids().patient, practice.ids().course);
    const auto shown = [&] {
        QStringList all;
        for (const QLabel* text : practice.window().recordPage().findChildren<QLabel*>()) {
            all.append(text->text());
        }
        return all.join(QLatin1Char('\n'))
            .replace(noBreakSpace(), QStringLiteral(" "))
            .toStdString();
    };
    EXPECT_THAT(shown(), HasSubstr("no unit lent"));
    must(practice.store().write(author(), "lend", [&](db::Writing& writing) {
        Loan loan;
        loan.unit = unit;
        loan.course = practice.ids().course;
        loan.lentOn = day(2026, 2, 9);
        loan.dueOn = day(2026, 3, 9);
        db::lend(writing, loan);
    }));
    emit practice.services().events.loansChanged();
    EXPECT_THAT(shown(), HasSubstr("U-03 · Two-channel unit A"));
    EXPECT_THAT(shown(), HasSubstr("lent since 9 Feb, was due back 9 Mar"));
    const StimulatorId other =
        must(practice.store().write(author(), "add stimulator", [](db::Writing& writing) {
            return db::addStimulator(writing, aUnit("Two-channel unit B"));
        }));
    emit practice.services().events.stimulatorsChanged();
    PlanDraft& draft = practice.window().recordPage().planPage().draft();
    draft.chooseStimulator(other);
    EXPECT_THAT(shown(), HasSubstr("U-03 · Two-channel unit A\ndraft: Two-channel unit B"))
        << "she has the unit of the plan in force; the draft is for another";
    draft.undoStack().undo();
    practice.window().recordPage().showPage(RecordPage::handoutIndex);
    const auto* paper = practice.window().recordPage().handoutPage().findChild<PaperView*>();
    std::string pages;
    for (int page = 0; page < paper->pageCount(); ++page) {
        pages += paper->document()->pageText(page).toStdString();
    }
    EXPECT_THAT(pages, HasSubstr("Two-channel unit A, unit U-03"));
}

TEST_F(LoansWindow, StimulatorsStandWithTheirVerdict)
{
    Stimulator direct = aUnit("A direct-current unit");
    direct.waveforms = {Waveform::directCurrent};
    must(practice.store().write(author(), "add stimulator", [&](db::Writing& writing) {
        return db::addStimulator(writing, direct);
    }));
    openWindow([](QDialog& dialog) {
        QTest::keyClick(&dialog, Qt::Key_S, Qt::AltModifier);
        auto* list = dialog.findChild<QListWidget*>(QStringLiteral("records"));
        ASSERT_TRUE(list->isVisible());
        EXPECT_THAT(list->item(0)->text().toStdString(), HasSubstr("will not do"));
        EXPECT_THAT(label(dialog, "profileVerdict"),
                    HasSubstr("Direct or unbalanced current is not suitable"));
        list->setFocus();
        QTest::keyClick(list, Qt::Key_Down);
        EXPECT_THAT(label(dialog, "profileVerdict"), HasSubstr("Will do for muscle exercise"));
    });
}

TEST(LoansOfAnEmptyPractice, BeginWithAStimulator)
{
    PracticeWindow practice(false);
    StimulatorsDialog dialog(practice.services(), std::nullopt, nullptr);
    dialog.show();
    EXPECT_THAT(dialog.findChild<QLabel*>(QStringLiteral("noUnits"))->text().toStdString(),
                HasSubstr("No stimulator is described yet"));
    EXPECT_FALSE(dialog.findChild<QPushButton*>(QStringLiteral("newUnit"))->isEnabled());
}
