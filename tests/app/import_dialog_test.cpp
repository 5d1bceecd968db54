// SPDX-License-Identifier: GPL-3.0-or-later
// A diary taken over in the window, by keyboard: Ctrl I on the record, the file, the rows, the
// choice between two values, Take over. Counted by hand from aDiaryOfFourWeeks().
#include "app/diary_import/import_dialog.h"
#include "app/diary_import/import_rows_model.h"
#include "app/patient/record_page.h"
#include "tests/app/practice_window.h"
#include "tests/support/diary_records.h"

#include "db/diary_mappings.h"
#include "db/practice_preferences.h"

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QPushButton>
#include <QTableView>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using testing::HasSubstr;
using testing::Not;

namespace
{

class ImportingADiary : public testing::Test
{
protected:
    ImportingADiary()
    {
        anIssuedPlan(practice.store(), practice.ids());
        aDiaryOfFourWeeks(practice.store(), practice.ids());
        practice.window().openPatient(practice.ids().patient, std::nullopt);
    }

    /// Presses Ctrl I with a file to choose; `act` is done in the dialog that follows.
    void importFile(const QByteArray& text, const std::function<void(ImportDialog&)>& act)
    {
        QFile file(practice.temp().folder() + QStringLiteral("/diary.csv"));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly) && file.write(text) == text.size());
        file.close();
        practice.prompts().diary = file.fileName();
        practice.window().activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&practice.window()));
        bool seen = false;
        onNextDialog([&](QDialog& dialog) {
            seen = true;
            auto* shown = qobject_cast<ImportDialog*>(&dialog);
            if (shown == nullptr) {
                ADD_FAILURE() << "another dialog";
                dialog.reject();
                return;
            }
            act(*shown);
            if (shown->isVisible()) {
                shown->reject();
            }
        });
        QTest::keyClick(&practice.window(), Qt::Key_I, Qt::ControlModifier);
        EXPECT_TRUE(seen);
    }
    static void press(QWidget* button)
    {
        button->setFocus();
        QTest::keyClick(button, Qt::Key_Space);
    }
    template <class Widget>
    static Widget* in(ImportDialog& dialog, const char* name)
    {
        auto* found = dialog.findChild<Widget*>(QLatin1String(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
    static std::string cell(ImportDialog& dialog, int row, int column)
    {
        const auto* model = in<QTableView>(dialog, "importRows")->model();
        return model->index(row, column).data().toString().toStdString();
    }
    void remember(const db::DiaryMapping& mapping)
    {
        must(practice.store().write(author(), "remember columns", [&](db::Writing& writing) {
            db::saveDiaryMapping(writing, mapping, 0);
        }));
    }
    std::vector<DiaryEntry> entries()
    {
        return must(practice.store().read([&](db::Reading& reading) {
            return db::diaryEntriesOf(reading, practice.ids().course, day(2026, 1, 1),
                                      day(2026, 12, 31));
        }));
    }

    PracticeWindow practice;
};

const QByteArray twoNewOneDifferent = "date,minutes,comfort\n2026-02-09,15,\n2026-03-09,20,7\n"
                                      "2026-03-10,18,6\n2026-02-01,20,\n";

} // namespace

TEST_F(ImportingADiary, ShowsEveryRowWithItsStateBeforeAnythingIsSaved)
{
    importFile(twoNewOneDifferent, [&](ImportDialog& dialog) {
        EXPECT_EQ(cell(dialog, 0, ImportRowsModel::state), "≠ differs");
        EXPECT_EQ(cell(dialog, 0, ImportRowsModel::onFile), "20\u00a0min");
        EXPECT_EQ(cell(dialog, 0, ImportRowsModel::inFile), "15\u00a0min");
        EXPECT_EQ(cell(dialog, 0, ImportRowsModel::taken), "what is on file");
        EXPECT_EQ(cell(dialog, 1, ImportRowsModel::state), "+ new");
        EXPECT_EQ(cell(dialog, 3, ImportRowsModel::state), "– before the course");
        EXPECT_THAT(in<QLabel>(dialog, "importCounts")->text().toStdString(),
                    HasSubstr("1 of 4 rows lie outside this course; they are left out."));
        EXPECT_EQ(in<QPushButton>(dialog, "takeOver")->text(), QStringLiteral("&Take over 2 rows"));
        EXPECT_FALSE(in<QCheckBox>(dialog, "completeThrough")->isChecked());
        EXPECT_FALSE(in<QWidget>(dialog, "dateQuestion")->isVisible());
    });
    EXPECT_EQ(entries().size(), 14U);
}

TEST_F(ImportingADiary, TakesOverByKeyboardWhatWasChosen)
{
    importFile(twoNewOneDifferent, [&](ImportDialog& dialog) {
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Home, Qt::ControlModifier);
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Space);
        EXPECT_EQ(cell(dialog, 0, ImportRowsModel::taken), "the file’s");
        EXPECT_EQ(in<QPushButton>(dialog, "takeOver")->text(), QStringLiteral("&Take over 3 rows"));
        press(in<QPushButton>(dialog, "takeOver"));
    });
    const auto all = entries();
    ASSERT_EQ(all.size(), 16U);
    EXPECT_EQ(all.front().duration, std::chrono::minutes(15));
    EXPECT_EQ(all.back().source, DiarySource::file);
    EXPECT_EQ(all.back().enteredByName, "Ruta Vennel");
    const std::string told = practice.prompts().told.toStdString();
    EXPECT_THAT(told, HasSubstr("3 rows are taken over."));
    EXPECT_THAT(told, HasSubstr("Where rows differ from what is on file, the file’s was taken for "
                                "1 of 1."));
    EXPECT_THAT(told, Not(HasSubstr("differs from what is on file.")));
}

TEST_F(ImportingADiary, AsksForTheOrderOfDatesOnlyWhereItIsOpen)
{
    importFile("date,minutes\n9/3/2026,20\n10/3/2026,20\n", [&](ImportDialog& dialog) {
        EXPECT_TRUE(in<QWidget>(dialog, "dateQuestion")->isVisible());
        EXPECT_FALSE(in<QPushButton>(dialog, "takeOver")->isEnabled());
        auto* order = in<QComboBox>(dialog, "dateOrder");
        order->setFocus();
        QTest::keyClick(order, Qt::Key_Down);
        EXPECT_EQ(cell(dialog, 0, ImportRowsModel::state), "+ new");
        press(in<QPushButton>(dialog, "takeOver"));
    });
    EXPECT_EQ(entries().back().day, day(2026, 3, 10));
}

TEST_F(ImportingADiary, MatchesAndRemembersColumns)
{
    importFile("Datum;Dauer\n2026-03-09;20,5\n", [&](ImportDialog& dialog) {
        EXPECT_THAT(dialog.problemText().toStdString(),
                    HasSubstr("The file has no column for date. Columns found: Datum, Dauer."));
        for (const auto& [name, presses] : {std::pair("holds_date", 1), {"holds_minutes", 2}}) {
            auto* box = in<QComboBox>(dialog, name);
            box->setFocus();
            for (int i = 0; i < presses; ++i) {
                QTest::keyClick(box, Qt::Key_Down);
            }
        }
        EXPECT_EQ(dialog.problemText(), QString());
        auto* comfort = in<QComboBox>(dialog, "holds_comfort");
        QTest::keyClick(comfort, Qt::Key_Down);
        EXPECT_THAT(dialog.problemText().toStdString(),
                    HasSubstr("“Datum” is chosen for date and for comfort."));
        QTest::keyClick(comfort, Qt::Key_Up);
        EXPECT_EQ(dialog.problemText(), QString());
        typeInto(in<QLineEdit>(dialog, "rememberAs"), QStringLiteral("Tracker"));
        QTest::keyClick(in<QLineEdit>(dialog, "rememberAs"), Qt::Key_Return);
    });
    EXPECT_EQ(entries().back().duration, std::chrono::seconds(1230));
    importFile("Datum;Dauer\n2026-03-10;20\n", [&](ImportDialog& dialog) {
        EXPECT_EQ(in<QComboBox>(dialog, "mapping")->currentText(), QStringLiteral("Tracker"));
        EXPECT_EQ(cell(dialog, 0, ImportRowsModel::state), "+ new");
    });
}

TEST_F(ImportingADiary, SaysThatTheDiaryIsCompleteOnlyWhereItIsTicked)
{
    importFile(twoNewOneDifferent, [&](ImportDialog& dialog) {
        press(in<QCheckBox>(dialog, "completeThrough"));
        EXPECT_TRUE(in<QCheckBox>(dialog, "completeThrough")->isChecked());
        press(in<QPushButton>(dialog, "takeOver"));
    });
    const auto through = must(practice.store().read([&](db::Reading& reading) {
        return db::diaryReceivedThrough(reading, practice.ids().course);
    }));
    EXPECT_EQ(through, day(2026, 3, 10));
}

TEST_F(ImportingADiary, ComparesAgainWhatWasChangedElsewhere)
{
    importFile(twoNewOneDifferent, [&](ImportDialog& dialog) {
        must(practice.store().write(author(), "enter diary", [&](db::Writing& writing) {
            DiaryEntry entry;
            entry.course = practice.ids().course;
            entry.day = day(2026, 3, 9);
            entry.duration = std::chrono::minutes(5);
            db::addDiaryEntry(writing, entry);
        }));
        press(in<QPushButton>(dialog, "takeOver"));
        EXPECT_TRUE(dialog.isVisible());
        EXPECT_THAT(dialog.problemText().toStdString(), HasSubstr("changed elsewhere"));
        EXPECT_EQ(cell(dialog, 1, ImportRowsModel::state), "≠ differs");
    });
    EXPECT_EQ(entries().size(), 15U);
}

TEST_F(ImportingADiary, HoldsTheFileAgainstTheCourseAsItIsStored)
{
    // Ended in another window, which this one was not told of.
    must(practice.store().write(author(), "end course", [&](db::Writing& writing) {
        Course ended = db::course(writing, practice.ids().course).value();
        ended.endDate = day(2026, 3, 9);
        db::changeCourse(writing, ended);
    }));
    importFile(twoNewOneDifferent, [&](ImportDialog& dialog) {
        EXPECT_EQ(cell(dialog, 1, ImportRowsModel::state), "+ new");
        EXPECT_EQ(cell(dialog, 2, ImportRowsModel::state), "– after the course");
    });
}

TEST_F(ImportingADiary, ChoosesOnceForAllRowsThatAddToOneDay)
{
    // "Red until Wednesday" is on file.
    importFile("date,minutes,remark\n2026-02-10,,Warm\n2026-02-10,,Tired\n",
               [&](ImportDialog& dialog) {
                   EXPECT_EQ(cell(dialog, 1, ImportRowsModel::state), "≠ differs");
                   EXPECT_EQ(cell(dialog, 1, ImportRowsModel::taken), "what is on file");
                   QTest::keyClick(dialog.focusWidget(), Qt::Key_Home, Qt::ControlModifier);
                   QTest::keyClick(dialog.focusWidget(), Qt::Key_Space);
                   EXPECT_EQ(cell(dialog, 0, ImportRowsModel::taken), "the file’s");
                   EXPECT_EQ(cell(dialog, 1, ImportRowsModel::taken), "the file’s");
               });
}

TEST_F(ImportingADiary, BelievesTheFileMoreThanTheOrderThatIsRemembered)
{
    remember({.name = "Tracker",
              .dateOrder = DateOrder::dayMonthYear,
              .columns = {{"Datum", {.column = DiaryColumn::date}},
                          {"Dauer", {.column = DiaryColumn::minutes}}}});
    // No month has the number 28; 03/04 is 4 March then, which has no entry yet.
    importFile("Datum;Dauer\n02/28/2026;20\n03/04/2026;20\n", [&](ImportDialog& dialog) {
        EXPECT_EQ(in<QComboBox>(dialog, "mapping")->currentText(), QStringLiteral("Tracker"));
        EXPECT_EQ(cell(dialog, 0, ImportRowsModel::state), "+ new");
        EXPECT_EQ(cell(dialog, 1, ImportRowsModel::state), "+ new");
        press(in<QPushButton>(dialog, "takeOver"));
    });
    EXPECT_EQ(entries().back().day, day(2026, 3, 4));
    importFile("Datum;Dauer\n03/05/2026;20\n", [&](ImportDialog& dialog) {
        EXPECT_TRUE(in<QWidget>(dialog, "dateQuestion")->isVisible());
        EXPECT_EQ(cell(dialog, 0, ImportRowsModel::state), "– after today") << "3 May";
    });
}

TEST_F(ImportingADiary, TakesNothingOverInAPracticeThatIsOpenForReading)
{
    const auto reading =
        must(db::Store::open(practice.temp().file(), db::Opening::readOnly, practice.temp().clock));
    const Services& other = practice.services();
    const Services services{*reading,      other.clock,  other.text,  other.look,
                            other.prompts, other.events, other.author};
    const Course course = must(reading->read([&](db::Reading& view) {
                              return db::course(view, practice.ids().course);
                          })).value();
    ImportDialog dialog(services, course, QStringLiteral("diary.csv"), twoNewOneDifferent, nullptr);
    EXPECT_EQ(cell(dialog, 1, ImportRowsModel::state), "+ new");
    EXPECT_FALSE(in<QPushButton>(dialog, "takeOver")->isEnabled());
}

TEST_F(ImportingADiary, SaysWhyNothingCanBeTakenOverWhereWhatIsRememberedCannotBeRead)
{
    must(practice.store().write(author(), "set preference", [](db::Writing& writing) {
        db::setPracticePreference(writing, "diary_import_mappings", "{}", 0);
    }));
    importFile(twoNewOneDifferent, [&](ImportDialog& dialog) {
        EXPECT_NE(dialog.problemText(), QString());
        EXPECT_EQ(in<QPushButton>(dialog, "takeOver")->text(), QStringLiteral("&Take over 0 rows"));
        EXPECT_FALSE(in<QPushButton>(dialog, "takeOver")->isEnabled());
    });
}

TEST_F(ImportingADiary, ShowsWhatTheFileSaysAsText)
{
    importFile("date,minutes,remark\n2026-03-09,20,\"<b>=HYPERLINK(\"\"x\"\")</b>\"\n",
               [&](ImportDialog& dialog) {
                   EXPECT_THAT(cell(dialog, 0, ImportRowsModel::inFile),
                               HasSubstr("<b>=HYPERLINK(\"x\")</b>"));
                   const auto* model = in<QTableView>(dialog, "importRows")->model();
                   const auto tip =
                       model->index(0, ImportRowsModel::inFile).data(Qt::ToolTipRole).toString();
                   EXPECT_THAT(tip.toStdString(), HasSubstr("&lt;b&gt;"));
               });
}

TEST_F(ImportingADiary, NeedsARecordWithACourse)
{
    practice.window().showCaseload();
    int found = 0;
    for (const QAction* action : practice.window().findChildren<QAction*>()) {
        if (action->shortcut() == QKeySequence(Qt::CTRL | Qt::Key_I)) {
            ++found;
            EXPECT_FALSE(action->isEnabled());
        }
    }
    EXPECT_EQ(found, 1);
}
