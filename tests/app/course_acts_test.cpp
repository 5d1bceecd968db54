// SPDX-License-Identifier: GPL-3.0-or-later
// Pausing, going on, ending and reopening a course in the real window, and the plans side by side.
#include "app/grid/course_grid_widget.h"
#include "app/patient/course_act_forms.h"
#include "app/patient/record_header.h"
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "tests/app/practice_window.h"

#include "db/course_events.h"
#include "db/courses.h"
#include "db/history.h"
#include "db/plans.h"

#include "core/prescribed_days.h"

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableView>
#include <QTest>

#include <algorithm>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

/// A course of eight weeks from 9 February under its first plan; today is 12 March, in week 5.
class CourseActs : public testing::Test
{
protected:
    CourseActs()
    {
        Draft draft = aDraft(practice.ids());
        draft.blocks[0].weeks = 8;
        must(practice.store().write(author(), "issue plan", [&](db::Writing& writing) {
            return db::issuePlan(writing, draft,
                                 {.fromDate = day(2026, 2, 9),
                                  .reason = "first plan",
                                  .issuedBy = practice.ids().practitioner},
                                 day(2026, 3, 12));
        }));
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        practice.bringToFront();
    }

    RecordPage& record() { return practice.window().recordPage(); }
    std::vector<Pause> pauses()
    {
        return must(practice.store().read(
            [&](db::Reading& r) { return db::pausesOf(r, practice.ids().course); }));
    }
    Course course()
    {
        return must(practice.store().read(
                        [&](db::Reading& r) { return db::course(r, practice.ids().course); }))
            .value();
    }
    std::vector<Plan> plans()
    {
        return must(practice.store().read(
            [&](db::Reading& r) { return db::plansOf(r, practice.ids().course); }));
    }
    QAction* action(const char* text)
    {
        for (QAction* one : practice.window().findChildren<QAction*>()) {
            if (one->text().remove(QLatin1Char('&')) == QString::fromUtf8(text)) {
                return one;
            }
        }
        ADD_FAILURE() << "no act " << text;
        return nullptr;
    }
    /// Fills the fields of the form that the act opens, and saves. Returns what it says is wrong.
    QString fill(const char* act, const std::vector<std::pair<const char*, const char*>>& days,
                 const char* reason)
    {
        QString wrong;
        onNextDialog([&](QDialog& dialog) {
            for (const auto& [field, text] : days) {
                typeInto(dialog.findChild<QLineEdit*>(QString::fromLatin1(field)),
                         QString::fromLatin1(text));
            }
            if (auto* field = dialog.findChild<QPlainTextEdit*>(QStringLiteral("reason"))) {
                typeInto(field, QString::fromUtf8(reason));
            }
            QTest::mouseClick(dialog.findChild<QPushButton*>(QStringLiteral("save")),
                              Qt::LeftButton);
            if (dialog.isVisible()) {
                wrong = dialog.findChild<QLabel*>(QStringLiteral("problem"))->text();
                dialog.reject();
            }
        });
        action(act)->trigger();
        return wrong;
    }
    QString headerLine()
    {
        QStringList lines;
        for (const QLabel* label : record().findChild<RecordHeader*>()->findChildren<QLabel*>()) {
            lines.append(label->text());
        }
        return lines.join(QLatin1Char('\n'));
    }
    static bool isPaused(const std::vector<PrescribedDay>& days, Date day)
    {
        const auto found = std::ranges::find(days, day, &PrescribedDay::day);
        return found != days.end() && found->isPaused;
    }

    PracticeWindow practice;
};

} // namespace

TEST_F(CourseActs, APauseIsSavedShownInTheHeaderAndSigned)
{
    EXPECT_EQ(fill("Pause the course…", {{"pauseFrom", "3 Mar 2026"}}, "operation"), QString());
    ASSERT_EQ(pauses().size(), 1U);
    EXPECT_EQ(pauses()[0].fromDate, day(2026, 3, 3));
    EXPECT_EQ(pauses()[0].toDate, std::nullopt);
    EXPECT_EQ(pauses()[0].reason, "operation");
    EXPECT_TRUE(headerLine().contains(QStringLiteral("paused since 3 Mar")))
        << headerLine().toStdString();
    const auto history = must(practice.store().read(
        [&](db::Reading& r) { return db::historyOf(r, practice.ids().patient, 50); }));
    EXPECT_TRUE(std::ranges::any_of(history, [](const db::Change& change) {
        return change.recordKind == "pause" && change.practitionerName == "Ruta Vennel";
    })) << "the change record says who";
}

TEST_F(CourseActs, PausedDaysAreDotsInTheGrid)
{
    fill("Pause the course…", {{"pauseFrom", "16 Mar 2026"}, {"pauseUntil", "22 Mar 2026"}},
         "holiday");
    auto* grid = practice.find<CourseGridWidget>("courseGrid");
    grid->setFocus();
    // Today is Thursday of week 5; the pause is all of week 6.
    QTest::keyClick(grid, Qt::Key_Right);
    EXPECT_EQ(isoDate(grid->focusedDay()), "2026-03-19");
    EXPECT_TRUE(grid->accessibleName().contains(QStringLiteral("paus"), Qt::CaseInsensitive))
        << grid->accessibleName().toStdString();
}

TEST_F(CourseActs, APauseThatOverlapsAnotherIsRefusedWithOneSentence)
{
    fill("Pause the course…", {{"pauseFrom", "3 Mar 2026"}, {"pauseUntil", "9 Mar 2026"}},
         "holiday");
    EXPECT_EQ(fill("Pause the course…",
                   {{"pauseFrom", "9 Mar 2026"}, {"pauseUntil", "20 Mar 2026"}}, "again")
                  .replace(noBreakSpace(), QStringLiteral(" ")),
              QStringLiteral("A pause from 3 Mar 2026 to 9 Mar 2026 stands already. Enter days "
                             "outside it."));
    EXPECT_EQ(pauses().size(), 1U);
}

TEST_F(CourseActs, APauseNeedsDaysInOrderAndAReason)
{
    EXPECT_TRUE(fill("Pause the course…",
                     {{"pauseFrom", "9 Mar 2026"}, {"pauseUntil", "8 Mar 2026"}}, "holiday")
                    .contains(QStringLiteral("before the first")));
    EXPECT_TRUE(fill("Pause the course…", {{"pauseFrom", "1 Feb 2026"}}, "holiday")
                    .contains(QStringLiteral("starts on")));
    EXPECT_TRUE(fill("Pause the course…", {{"pauseFrom", "soon"}}, "holiday")
                    .contains(QStringLiteral("“soon”")));
    EXPECT_TRUE(fill("Pause the course…", {{"pauseFrom", "9 Mar 2026"}}, "")
                    .contains(QStringLiteral("reason is empty")));
    EXPECT_TRUE(pauses().empty());
}

TEST_F(CourseActs, GoingOnEndsThePauseTheDayBefore)
{
    EXPECT_FALSE(action("Go on after the pause…")->isEnabled());
    fill("Pause the course…", {{"pauseFrom", "3 Mar 2026"}}, "operation");
    ASSERT_TRUE(action("Go on after the pause…")->isEnabled());
    EXPECT_TRUE(fill("Go on after the pause…", {{"goesOnFrom", "2 Mar 2026"}}, "")
                    .contains(QStringLiteral("begins on")));
    EXPECT_EQ(fill("Go on after the pause…", {{"goesOnFrom", "12 Mar 2026"}}, ""), QString());
    EXPECT_EQ(pauses()[0].toDate, day(2026, 3, 11));
    EXPECT_FALSE(headerLine().contains(QStringLiteral("paused")));
    EXPECT_FALSE(action("Go on after the pause…")->isEnabled());
}

TEST_F(CourseActs, APauseThatNeverBeganIsWithdrawn)
{
    fill("Pause the course…", {{"pauseFrom", "1 Apr 2026"}}, "holiday");
    EXPECT_EQ(fill("Go on after the pause…", {}, ""), QString()) << "its first day is proposed";
    EXPECT_TRUE(pauses()[0].withdrawn);
}

TEST_F(CourseActs, ACourseEndsOnADayForAReason)
{
    EXPECT_TRUE(fill("End the course…", {{"lastDay", "1 Feb 2026"}}, "done")
                    .contains(QStringLiteral("starts on")));
    EXPECT_TRUE(fill("End the course…", {}, "").contains(QStringLiteral("reason is empty")));
    EXPECT_EQ(fill("End the course…", {{"lastDay", "8 Mar 2026"}}, "goals reached"), QString());
    EXPECT_EQ(course().endDate, day(2026, 3, 8));
    EXPECT_EQ(course().endReason, "goals reached");
    EXPECT_TRUE(headerLine().contains(QStringLiteral("ended 8 Mar 2026: goals reached")))
        << headerLine().toStdString();
    EXPECT_FALSE(action("Pause the course…")->isEnabled());
    EXPECT_FALSE(action("End the course…")->isEnabled());
    EXPECT_TRUE(action("Reopen the course…")->isEnabled());
}

TEST_F(CourseActs, AReopenedCourseStandsStillUntilTheNextPlanIsIssued)
{
    fill("End the course…", {{"lastDay", "8 Mar 2026"}}, "goals reached");
    EXPECT_EQ(fill("Reopen the course…", {}, "pain came back"), QString());
    EXPECT_EQ(course().endDate, std::nullopt);
    ASSERT_EQ(pauses().size(), 1U);
    EXPECT_EQ(pauses()[0].fromDate, day(2026, 3, 9));
    EXPECT_TRUE(headerLine().contains(QStringLiteral("paused since 9 Mar")))
        << headerLine().toStdString();

    bool offered = false;
    onNextDialog([&](QDialog& dialog) {
        auto* goesOn = dialog.findChild<QCheckBox*>(QStringLiteral("goesOn"));
        offered = goesOn != nullptr && goesOn->isChecked();
        typeInto(dialog.findChild<QLineEdit*>(QStringLiteral("fromDate")),
                 QStringLiteral("16 Mar 2026"));
        typeInto(dialog.findChild<QPlainTextEdit*>(QStringLiteral("reason")),
                 QStringLiteral("taken up again"));
        QTest::mouseClick(dialog.findChild<QPushButton*>(QStringLiteral("save")), Qt::LeftButton);
        if (dialog.isVisible()) {
            ADD_FAILURE()
                << dialog.findChild<QLabel*>(QStringLiteral("problem"))->text().toStdString();
            dialog.reject();
        }
    });
    record().planPage().issue();
    EXPECT_TRUE(offered);
    ASSERT_EQ(plans().size(), 2U);
    EXPECT_EQ(pauses()[0].toDate, day(2026, 3, 15));
    const auto days = prescribedDays(course(), plans(), pauses());
    EXPECT_FALSE(isPaused(days, day(2026, 3, 8)));
    EXPECT_TRUE(isPaused(days, day(2026, 3, 9)));
    EXPECT_TRUE(isPaused(days, day(2026, 3, 15)));
    EXPECT_FALSE(isPaused(days, day(2026, 3, 16)));
    EXPECT_TRUE(headerLine().contains(QStringLiteral("paused since 9 Mar, until 15 Mar")));
}

TEST_F(CourseActs, AnEndedCourseIsNotPlannedAnyFurther)
{
    fill("End the course…", {{"lastDay", "8 Mar 2026"}}, "goals reached");
    QString wrong;
    onNextDialog([&](QDialog& dialog) {
        typeInto(dialog.findChild<QPlainTextEdit*>(QStringLiteral("reason")),
                 QStringLiteral("more"));
        QTest::mouseClick(dialog.findChild<QPushButton*>(QStringLiteral("save")), Qt::LeftButton);
        wrong = dialog.findChild<QLabel*>(QStringLiteral("problem"))->text();
        dialog.reject();
    });
    record().planPage().issue();
    EXPECT_TRUE(wrong.contains(QStringLiteral("choose Reopen"))) << wrong.toStdString();
    EXPECT_EQ(plans().size(), 1U);
}

TEST_F(CourseActs, WorkOnTheDraftGoesOnThroughAPause)
{
    record().planPage().draft().setSessionsPerDay(3);
    fill("Pause the course…", {{"pauseFrom", "3 Mar 2026"}}, "operation");
    EXPECT_EQ(record().planPage().draft().block()->sessionsPerDay, 3);
    EXPECT_TRUE(record().planPage().draft().undoStack().canUndo()) << "with its steps of undo";
}

TEST_F(CourseActs, PlansStandSideBySideWithTheirDifferencesMarked)
{
    record().planPage().draft().setSessionsPerDay(2);
    QString differences;
    int shownRows = 0;
    int differingRows = 0;
    QString spoken;
    onNextDialog([&](QDialog& dialog) {
        differences = dialog.findChild<QLabel*>(QStringLiteral("planDifferences"))->text();
        EXPECT_EQ(dialog.findChild<QComboBox*>(QStringLiteral("leftPlan"))->currentText(),
                  QStringLiteral("Plan 1, from 9 Feb 2026"));
        EXPECT_EQ(dialog.findChild<QComboBox*>(QStringLiteral("rightPlan"))->currentText(),
                  QStringLiteral("Draft"));
        const auto* model = dialog.findChild<QTableView*>(QStringLiteral("planRows"))->model();
        shownRows = model->rowCount();
        auto* only = dialog.findChild<QCheckBox*>(QStringLiteral("onlyDifferences"));
        only->setFocus();
        QTest::keyClick(only, Qt::Key_Space);
        differingRows = model->rowCount();
        spoken = model->index(1, 0).data(Qt::AccessibleTextRole).toString();
        auto* right = dialog.findChild<QComboBox*>(QStringLiteral("rightPlan"));
        right->setFocus();
        QTest::keyClick(right, Qt::Key_Up);
        EXPECT_EQ(dialog.findChild<QLabel*>(QStringLiteral("planDifferences"))->text(),
                  QStringLiteral("No value differs."))
            << "the same plan on both sides";
        dialog.accept();
    });
    QTest::keyClick(&practice.window(), Qt::Key_Return, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(differences, QStringLiteral("Values that differ: 1"));
    EXPECT_GT(shownRows, 10);
    EXPECT_EQ(differingRows, 2) << "the block and its value";
    EXPECT_EQ(spoken, QStringLiteral("Block 1, Sessions, differs: once a day and twice a day"));
}

TEST_F(CourseActs, AClickOnThePlanInTheHeaderShowsThePlans)
{
    bool shown = false;
    onNextDialog([&](QDialog& dialog) {
        shown = dialog.findChild<QTableView*>(QStringLiteral("planRows")) != nullptr;
        dialog.reject();
    });
    QTest::mouseClick(practice.find<QLabel>("planFact"), Qt::LeftButton);
    EXPECT_TRUE(shown);
}
