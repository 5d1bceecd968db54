// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/history_model.h"
#include "app/patient/history_page.h"
#include "app/patient/record_page.h"
#include "tests/app/practice_window.h"

#include "db/loans.h"

#include <QAbstractItemView>
#include <QFile>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableView>
#include <QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

class History : public testing::Test
{
protected:
    /// The table as rows of text: "who | what | from | to".
    std::vector<std::string> rows()
    {
        const auto* table = practice.find<QTableView>("history");
        std::vector<std::string> lines;
        for (int row = 0; row < table->model()->rowCount(); ++row) {
            QStringList cells;
            for (int column = HistoryModel::who; column <= HistoryModel::to; ++column) {
                cells.append(table->model()->index(row, column).data().toString());
            }
            lines.push_back(cells.join(QStringLiteral(" | ")).toStdString());
        }
        return lines;
    }
    void open()
    {
        practice.window().openPatient(practice.ids().patient, practice.ids().course);
        QTest::keyClick(&practice.window(), Qt::Key_H, Qt::ControlModifier);
    }

    /// What the button writes for a spreadsheet.
    QString savedTable()
    {
        practice.prompts().table = practice.temp().folder() + QStringLiteral("/history.csv");
        QTest::mouseClick(practice.find<QPushButton>("historyAsCsv"), Qt::LeftButton);
        QFile file(*practice.prompts().table);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return QString::fromUtf8(file.readAll());
    }

    PracticeWindow practice;
};

TEST_F(History, IsReachedWithAKeyAndSaysWhoChangedWhatFromAndTo)
{
    Patient agnes = aPatient();
    agnes.id = practice.ids().patient;
    agnes.birthDate = day(1958, 6, 5);
    agnes.archived = true;
    must(practice.store().write({.practitioner = std::nullopt, .name = "Anselm Orrick"},
                                "change patient",
                                [&](db::Writing& writing) { db::changePatient(writing, agnes); }));
    open();
    EXPECT_EQ(practice.window().recordPage().currentPage(), RecordPage::historyIndex);
    EXPECT_THAT(rows(), testing::ElementsAre(
                            "Anselm Orrick | Patient · Archived | no | yes",
                            "Anselm Orrick | Patient · Date of birth | 4 Jun 1958 | 5 Jun 1958",
                            "Set-up | Screening · Signed by | – | Ruta Vennel",
                            "Set-up | Screening · Key of who signed | – | 1",
                            "Set-up | Screening · Signed on | – | 9 Feb 2026",
                            "Set-up | Screening added |  | ", "Set-up | Course added |  | ",
                            "Set-up | Patient added |  | "));
}

TEST_F(History, WordsAnswersPlacesAndSkinTestsOfAScreening)
{
    Screening screening = allClear(practice.ids().course);
    screening.skin = {{.muscle = "soleus", .side = Side::left}};
    must(practice.store().write(author(), "screen again", [&](db::Writing& writing) {
        screening.id = db::addScreening(writing, screening);
        giveAnswer(screening, "active_implant", Answer::notKnown);
        giveAnswer(screening, "broken_skin", Answer::yes);
        screening.answers[1].places = {{BodyRegion::lowerLeg, PlaceSide::left}};
        screening.skin[0].warmCold = Sensation::notTested;
        screening.questions[2].advice = "Rest now and then.";
        screening.questions[2].adviceAt = AdvicePlace::after;
        screening.questions[2].questionClass = QuestionClass::localContraindication;
        db::changeScreening(writing, screening);
    }));
    open();
    const auto lines = rows();
    for (const char* line :
         {"Set-up | Screening · Question “active implant”, Answer | no | not known",
          "Set-up | Screening · Question “broken skin”, place 1, Part of the body | – | lower leg",
          "Set-up | Screening · Skin test 1, Warm and cold | – | not tested",
          "Set-up | Screening · Question “heart disease”, Advice | Breathe on quietly. | Rest now "
          "and then.",
          "Set-up | Screening · Question “heart disease”, Where the advice stands | during | after",
          "Set-up | Screening · Question “heart disease”, What a yes means | precaution | local "
          "contraindication"}) {
        EXPECT_THAT(lines, testing::Contains(line));
    }
}

TEST_F(History, WordsSettingsOfADraftWithTheirUnits)
{
    Draft draft = aDraft(practice.ids());
    const auto save = [&] {
        must(practice.store().write(author(), "save draft", [&](db::Writing& writing) {
            return db::saveDraft(writing, draft);
        }));
        ++draft.version;
    };
    save();
    draft.blocks[0].weeks = 6;
    draft.blocks[0].sites[0].settings.onTime = std::chrono::seconds(6);
    save();
    open();
    const auto lines = rows();
    EXPECT_THAT(lines,
                testing::Contains(testing::StartsWith("Set-up | Draft · Block 1, ")).Times(2));
    EXPECT_THAT(lines, testing::Contains(testing::AllOf(testing::HasSubstr("site 1"),
                                                        testing::EndsWith("4 s | 6 s"))));
}

TEST_F(History, WordsALoanWithTheNumberOfTheUnitAndItsDays)
{
    Loan loan;
    loan.course = practice.ids().course;
    loan.lentOn = day(2026, 2, 9);
    loan.dueOn = day(2026, 4, 6);
    must(practice.store().write(author(), "lend a unit", [&](db::Writing& writing) {
        LoanUnit unit;
        unit.inventoryNumber = "U-03";
        unit.stimulator = practice.ids().stimulator;
        loan.unit = db::addLoanUnit(writing, unit);
        loan.id = db::lend(writing, loan);
    }));
    open();
    emit practice.services().events.loansChanged();
    EXPECT_THAT(rows(), testing::IsSupersetOf(
                            {std::string("Set-up | Loan of a unit · Due back on | – | 6 Apr 2026"),
                             std::string("Set-up | Loan of a unit · Lent on | – | 9 Feb 2026"),
                             std::string("Set-up | Loan of a unit · Inventory number | – | U-03"),
                             std::string("Set-up | Loan of a unit added |  | ")}));
    must(practice.store().write(author(), "take a unit back", [&](db::Writing& writing) {
        db::takeBack(writing, loan, day(2026, 3, 2));
    }));
    emit practice.services().events.loansChanged();
    EXPECT_EQ(rows().front(), "Set-up | Loan of a unit · Given back on | – | 2 Mar 2026");
}

TEST_F(History, ShowsTheChosenChangeToItsEnd)
{
    Patient agnes = aPatient();
    agnes.id = practice.ids().patient;
    agnes.note = std::string(300, 'n') + "\nlast line";
    must(practice.store().write(author(), "change patient",
                                [&](db::Writing& writing) { db::changePatient(writing, agnes); }));
    open();
    auto* whole = practice.find<QPlainTextEdit>("wholeChange");
    EXPECT_THAT(whole->toPlainText().toStdString(), testing::EndsWith("\nlast line"));
    EXPECT_TRUE(whole->isReadOnly());
    auto* table = practice.find<QTableView>("history");
    QTest::keyClick(table, Qt::Key_Down);
    EXPECT_THAT(whole->toPlainText().toStdString(), testing::EndsWith("To: Ruta Vennel"));
}

TEST_F(History, CannotBeEdited)
{
    open();
    const auto* table = practice.find<QTableView>("history");
    EXPECT_EQ(table->editTriggers(), QAbstractItemView::NoEditTriggers);
    EXPECT_FALSE(table->model()->flags(table->model()->index(0, 3)) & Qt::ItemIsEditable);
}

TEST_F(History, FollowsChangesWhileItIsOpenAndReadsEarlierOnesAsItIsScrolled)
{
    Patient agnes = aPatient();
    agnes.id = practice.ids().patient;
    must(practice.store().write(author(), "change patient", [&](db::Writing& writing) {
        for (int i = 0; i < 250; ++i) {
            agnes.note = std::to_string(i);
            db::changePatient(writing, agnes);
            ++agnes.version;
        }
    }));
    open();
    auto* table = practice.find<QTableView>("history");
    EXPECT_EQ(table->model()->rowCount(), 200);
    table->scrollToBottom();
    EXPECT_EQ(table->model()->rowCount(), 256);
    agnes.note = "once more";
    must(practice.store().write(author(), "change patient",
                                [&](db::Writing& writing) { db::changePatient(writing, agnes); }));
    emit practice.services().events.patientChanged(practice.ids().patient);
    EXPECT_THAT(rows().front(), testing::HasSubstr("once more"));
}

TEST_F(History, IsSavedForASpreadsheetWithoutFormulas)
{
    Patient agnes = aPatient();
    agnes.id = practice.ids().patient;
    agnes.note = "=HYPERLINK(\"http://example.invalid\";\"x\"), \"quoted\"";
    must(practice.store().write(author(), "change patient",
                                [&](db::Writing& writing) { db::changePatient(writing, agnes); }));
    open();
    const QString text = savedTable();
    EXPECT_TRUE(text.startsWith(QStringLiteral("When,Who,")));
    EXPECT_TRUE(text.contains(QStringLiteral(",\"'=HYPERLINK(\"\"http")))
        << text.left(600).toStdString();
    EXPECT_EQ(QFile(*practice.prompts().table).permissions() &
                  (QFileDevice::ReadGroup | QFileDevice::ReadOther),
              QFileDevice::Permissions());
}

// The page reads some hundred changes at once; the table has them all.
TEST_F(History, IsSavedWholeHoweverFarItWasRead)
{
    Patient agnes = aPatient();
    agnes.id = practice.ids().patient;
    for (int i = 0; i < 450; ++i) {
        agnes.note = "note " + std::to_string(i);
        must(practice.store().write(author(), "change patient", [&](db::Writing& writing) {
            db::changePatient(writing, agnes);
        }));
        ++agnes.version;
    }
    open();
    const QString text = savedTable();
    EXPECT_GE(text.count(QLatin1Char('\n')), 450);
    for (const char* note : {"note 0,", "note 249", "note 449"}) {
        EXPECT_TRUE(text.contains(QLatin1String(note))) << note;
    }
}

} // namespace
