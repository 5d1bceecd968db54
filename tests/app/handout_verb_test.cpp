// SPDX-License-Identifier: GPL-3.0-or-later
// The command `handout`, run as the program runs it, on a practice file.
#include "app/command_line/command_line.h"
#include "app/command_line/handout_verb.h"
#include "tests/app/pdf_reader.h"
#include "tests/support/ordinary_user.h"
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/course_events.h"
#include "db/courses.h"
#include "db/plans.h"
#include "db/screenings.h"

#include <QFile>
#include <QLocale>

#include <cstdio>
#include <cstdlib>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;

namespace
{

class HandoutVerb : public testing::Test
{
protected:
    HandoutVerb()
    {
        store = temp.open();
        ids.emplace(aPracticeWithCourse(*store));
        QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
    }

    QString pdf() const { return temp.folder() + QStringLiteral("/out.pdf"); }

    int run(const QStringList& arguments)
    {
        out.clear();
        err.clear();
        QTextStream outStream(&out);
        QTextStream errStream(&err);
        return handoutVerb(arguments, {temp.clock, outStream, errStream});
    }

    int print(const QStringList& more = {}, const QString& patient = QStringLiteral("1001"))
    {
        return run(QStringList{QStringLiteral("--store"), temp.file(), QStringLiteral("--patient"),
                               patient, QStringLiteral("--out"), pdf()} +
                   more);
    }

    /// Eight weeks from 9 February 2026.
    void issuePlan()
    {
        Draft draft = aDraft(*ids);
        draft.blocks.front().weeks = 8;
        must(store->write(author(), "issue plan", [&](db::Writing& writing) {
            return db::issuePlan(writing, draft,
                                 {.fromDate = day(2026, 2, 9),
                                  .reason = "first plan",
                                  .issuedBy = ids->practitioner},
                                 day(2026, 3, 12));
        }));
    }

    void addCourse(const std::string& problem, std::optional<Date> endDate = std::nullopt)
    {
        Course course = aCourse(ids->patient);
        course.problem = problem;
        course.endDate = endDate;
        must(store->write(author(), "add course",
                          [&](db::Writing& writing) { return db::addCourse(writing, course); }));
    }

    void expectOneSentence(const char* part)
    {
        EXPECT_THAT(err.toStdString(), testing::HasSubstr(part));
        EXPECT_EQ(err.count(QLatin1Char('\n')), 1);
        EXPECT_TRUE(out.isEmpty());
        EXPECT_FALSE(QFile::exists(pdf()));
    }

    TempStore temp;
    std::unique_ptr<db::Store> store;
    std::optional<Practiced> ids;
    QString out;
    QString err;
};

} // namespace

TEST_F(HandoutVerb, WritesTheHandoutOfTheIssuedPlan)
{
    issuePlan();
    EXPECT_EQ(print(), exit_code::done) << err.toStdString();
    EXPECT_TRUE(err.isEmpty());
    const QString text = pdfText(pdf());
    for (const char* words :
         {"Agnes Thorley", "Knee replacement", "Vastus lateralis, right", "Printed 12 Mar 2026",
          "Patient 1001", "Plan 1 from 9 Feb 2026 by Ruta Vennel"}) {
        EXPECT_TRUE(text.contains(QString::fromUtf8(words))) << words;
    }
    EXPECT_NEAR(pdfPageSize(pdf()).height(), 842, 1);
}

TEST_F(HandoutVerb, TakesPaperAndLargePrint)
{
    issuePlan();
    ASSERT_EQ(print(), exit_code::done);
    const int pages = pdfPageCount(pdf());
    ASSERT_EQ(print({QStringLiteral("--paper"), QStringLiteral("letter"),
                     QStringLiteral("--large-print")}),
              exit_code::done);
    EXPECT_NEAR(pdfPageSize(pdf()).height(), 792, 1);
    EXPECT_GT(pdfPageCount(pdf()), pages);
}

TEST_F(HandoutVerb, EntersWhatItHandedOut)
{
    issuePlan();
    ASSERT_EQ(print(), exit_code::done) << err.toStdString();
    const auto documents = must(store->read(
        [&](db::Reading& reading) { return db::printedDocumentsOf(reading, ids->course); }));
    ASSERT_EQ(documents.size(), 1U);
    const PrintedDocument& document = documents.front();
    EXPECT_EQ(document.kind, DocumentKind::handout);
    EXPECT_EQ(document.medium, Medium::pdf);
    EXPECT_EQ(document.plan, must(store->read([&](db::Reading& reading) {
                                 return db::plansOf(reading, ids->course);
                             }))
                                 .back()
                                 .id);
    EXPECT_EQ(document.printedByName, "Command line");
}

TEST_F(HandoutVerb, EntersNothingWhereNothingWasWritten)
{
    EXPECT_EQ(print(), exit_code::badInput);
    EXPECT_TRUE(must(store->read([&](db::Reading& reading) {
                    return db::printedDocumentsOf(reading, ids->course);
                })).empty());
}

TEST_F(HandoutVerb, PrintsNothingThatTheRecordCouldNotHold)
{
    issuePlan();
    store.reset();
    const QByteArray folder = temp.folder().toLocal8Bit();
    const QByteArray file = temp.file().toLocal8Bit();
    ASSERT_EQ(chmod(folder.constData(), 0777), 0);
    ASSERT_EQ(chmod(file.constData(), 0444), 0);
    const auto printAsSomebody = [&] {
        const bool isRefused = becomeAnOrdinaryUser() && print() == exit_code::badInput &&
                               err.contains(QStringLiteral("Nothing was printed")) &&
                               !QFile::exists(pdf());
        std::fputs(qPrintable(err), stderr);
        std::_Exit(isRefused ? 0 : 1);
    };
    EXPECT_EXIT(printAsSomebody(), testing::ExitedWithCode(0), "can’t be written");
}

TEST_F(HandoutVerb, WithoutAnIssuedPlanThereIsNothingToPrint)
{
    EXPECT_EQ(print(), exit_code::badInput);
    expectOneSentence("No plan is issued for course 1 of patient 1001");
}

TEST_F(HandoutVerb, WhileTheScreeningIsNotSignedNothingIsWritten)
{
    issuePlan();
    must(store->write(author(), "screen again", [&](db::Writing& writing) {
        db::addScreening(writing, allClear(ids->course));
    }));
    EXPECT_EQ(print(), exit_code::badInput);
    expectOneSentence("The screening of this course is not signed.");
    must(store->write(author(), "sign", [&](db::Writing& writing) {
        db::signScreening(writing, *db::latestScreeningOf(writing, ids->course)->id, 1,
                          ids->practitioner, day(2026, 3, 12));
    }));
    EXPECT_EQ(print(), exit_code::done) << err.toStdString();
}

TEST_F(HandoutVerb, AContraindicationAnsweredYesBlocksAndNamesItself)
{
    issuePlan();
    must(store->write(author(), "screen again", [&](db::Writing& writing) {
        Screening screening = allClear(ids->course);
        giveAnswer(screening, "active_implant", Answer::yes);
        screening.answers.front().note = "pacemaker";
        db::signScreening(writing, db::addScreening(writing, screening), 1, ids->practitioner,
                          day(2026, 3, 12));
    }));
    EXPECT_EQ(print(), exit_code::badInput);
    expectOneSentence("“An implant with a battery?” is answered yes");
}

TEST_F(HandoutVerb, ThePrecautionsAdviceIsPrinted)
{
    issuePlan();
    must(store->write(author(), "screen again", [&](db::Writing& writing) {
        Screening screening = allClear(ids->course);
        giveAnswer(screening, "heart_disease", Answer::yes);
        screening.answers.back().note = "stable";
        db::signScreening(writing, db::addScreening(writing, screening), 1, ids->practitioner,
                          day(2026, 3, 12));
    }));
    ASSERT_EQ(print(), exit_code::done) << err.toStdString();
    EXPECT_TRUE(pdfText(pdf()).contains(QStringLiteral("Breathe on quietly.")));
}

TEST_F(HandoutVerb, AScreeningPastItsTermBlocks)
{
    issuePlan();
    temp.clock.set(Moment(day(2026, 8, 10)));
    EXPECT_EQ(print(), exit_code::badInput);
    expectOneSentence("held until 9 Aug 2026");
}

TEST_F(HandoutVerb, SeveralRunningCoursesAreListed)
{
    issuePlan();
    addCourse("Weak grip");
    EXPECT_EQ(print(), exit_code::badInput);
    expectOneSentence("1 Knee replacement (from 9 Feb 2026); 2 Weak grip (from 9 Feb 2026)");
    EXPECT_EQ(print({QStringLiteral("--course"), QStringLiteral("1")}), exit_code::done);
}

TEST_F(HandoutVerb, AnEndedCourseDoesNotStandInTheWay)
{
    issuePlan();
    addCourse("Weak grip", day(2026, 3, 1));
    EXPECT_EQ(print(), exit_code::done) << err.toStdString();
}

TEST_F(HandoutVerb, ACourseThatIsNotThereIsSaid)
{
    EXPECT_EQ(print({QStringLiteral("--course"), QStringLiteral("7")}), exit_code::badInput);
    expectOneSentence("Patient 1001 has no course 7");
}

TEST_F(HandoutVerb, AnUnknownPatientIsSaid)
{
    EXPECT_EQ(print({}, QStringLiteral("9999")), exit_code::badInput);
    expectOneSentence("There is no patient 9999");
}

TEST_F(HandoutVerb, APlanThatIsOverIsSaid)
{
    issuePlan();
    temp.clock.set(Moment(day(2026, 6, 1)));
    EXPECT_EQ(print(), exit_code::badInput);
    expectOneSentence("Plan 1 ended on 5 Apr 2026");
}

TEST_F(HandoutVerb, AStoreThatIsNotThereIsNotMade)
{
    const QString missing = temp.folder() + QStringLiteral("/missing.quadrille");
    EXPECT_EQ(run({QStringLiteral("--store"), missing, QStringLiteral("--patient"),
                   QStringLiteral("1001"), QStringLiteral("--out"), pdf()}),
              exit_code::badInput);
    expectOneSentence("missing.quadrille");
    EXPECT_FALSE(QFile::exists(missing));
}

TEST_F(HandoutVerb, APlaceThatCannotBeWrittenIsSaid)
{
    issuePlan();
    const QString place = temp.folder() + QStringLiteral("/missing/out.pdf");
    EXPECT_EQ(run({QStringLiteral("--store"), temp.file(), QStringLiteral("--patient"),
                   QStringLiteral("1001"), QStringLiteral("--out"), place}),
              exit_code::badInput);
    expectOneSentence("missing/out.pdf");
}

TEST_F(HandoutVerb, NeverWritesOverThePracticeFile)
{
    issuePlan();
    EXPECT_EQ(run({QStringLiteral("--store"), temp.file(), QStringLiteral("--patient"),
                   QStringLiteral("1001"), QStringLiteral("--out"), temp.file()}),
              exit_code::badInput);
    expectOneSentence("--out names the practice file itself");
    EXPECT_TRUE(temp.tryToOpen(db::Opening::existing).has_value());
}

TEST_F(HandoutVerb, ACommandLineThatCannotBeUnderstoodIsUsage)
{
    const QString file = temp.file();
    const QStringList whole{QStringLiteral("--store"),   file,
                            QStringLiteral("--patient"), QStringLiteral("1001"),
                            QStringLiteral("--out"),     pdf()};
    for (const QStringList& wrong :
         {QStringList{}, QStringList{QStringLiteral("--store"), file},
          whole + QStringList{QStringLiteral("more")},
          whole + QStringList{QStringLiteral("--paper"), QStringLiteral("a3")},
          whole + QStringList{QStringLiteral("--course"), QStringLiteral("one")},
          whole + QStringList{QStringLiteral("--course"), QStringLiteral("0")},
          whole + QStringList{QStringLiteral("--nonsense")},
          QStringList{QStringLiteral("--store")}}) {
        EXPECT_EQ(run(wrong), exit_code::usage) << wrong.join(QLatin1Char(' ')).toStdString();
        expectOneSentence("");
    }
}

TEST_F(HandoutVerb, ListsItsOptions)
{
    EXPECT_EQ(run({QStringLiteral("--help")}), exit_code::done);
    EXPECT_TRUE(out.contains(QStringLiteral("--large-print")));
    EXPECT_TRUE(err.isEmpty());
}
