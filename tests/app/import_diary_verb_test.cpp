// SPDX-License-Identifier: GPL-3.0-or-later
// The command `import-diary`, run as the program runs it, on a practice file. Figures counted by
// hand from aDiaryOfFourWeeks() (9 February to 8 March 2026) and the rows written here.
#include "app/command_line/demo_verb.h"
#include "app/command_line/import_diary_verb.h"
#include "tests/app/verb_outcome.h"
#include "tests/support/diary_records.h"
#include "tests/support/store_rows.h"

#include "db/diary_mappings.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::tests;
using namespace quadrille::test;
using testing::HasSubstr;

namespace
{

class ImportDiaryVerb : public testing::Test
{
protected:
    ImportDiaryVerb()
    {
        store = temp.open();
        ids.emplace(aPracticeWithCourse(*store));
        anIssuedPlan(*store, *ids);
        aDiaryOfFourWeeks(*store, *ids);
    }

    QString diary(const QByteArray& text)
    {
        QFile file(temp.folder() + QStringLiteral("/diary.csv"));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly) && file.write(text) == text.size());
        return file.fileName();
    }
    VerbOutcome run(const QByteArray& text, const QStringList& more = {})
    {
        return runVerb(importDiaryVerb,
                       QStringList{diary(text), QStringLiteral("--store"), temp.file(),
                                   QStringLiteral("--patient"), QStringLiteral("1001")} +
                           more);
    }
    std::vector<DiaryEntry> entries() const
    {
        return must(store->read([&](db::Reading& reading) {
            return db::diaryEntriesOf(reading, ids->course, day(2026, 1, 1), day(2026, 12, 31));
        }));
    }

    TempStore temp;
    std::unique_ptr<db::Store> store;
    std::optional<Practiced> ids;
};

const QByteArray newRows = "date,session,minutes,amplitude 1,comfort\n2026-03-09,1,20,42.5,7\n"
                           "2026-03-10,1,18,43,6\n";

} // namespace

TEST_F(ImportDiaryVerb, TakesOverNewRowsWithSourceFile)
{
    const VerbOutcome outcome = run(newRows);
    EXPECT_EQ(outcome.code, exit_code::done) << outcome.err;
    EXPECT_THAT(outcome.out, HasSubstr("2 rows are taken over."));
    const auto all = entries();
    ASSERT_EQ(all.size(), 16U) << "14 were there";
    EXPECT_EQ(all.back().source, DiarySource::file);
    EXPECT_EQ(all.back().duration, std::chrono::minutes(18));
    ASSERT_EQ(all.back().amplitudes.size(), 1U);
    EXPECT_EQ(all.back().amplitudes.front().amplitude, Amplitude::fromCount(43'000));
    const auto through = must(store->read(
        [&](db::Reading& reading) { return db::diaryReceivedThrough(reading, ids->course); }));
    EXPECT_EQ(through, day(2026, 3, 8)) << "nobody said that it is complete";
}

TEST_F(ImportDiaryVerb, FindsTheSameFileOnFileTheSecondTime)
{
    EXPECT_EQ(run(newRows).code, exit_code::done);
    const VerbOutcome again = run(newRows);
    EXPECT_EQ(again.code, exit_code::done);
    EXPECT_THAT(again.out, HasSubstr("2 rows are on file already; they are left out."));
    EXPECT_THAT(again.out, HasSubstr("0 rows are taken over."));
}

TEST_F(ImportDiaryVerb, TakesNothingOverWhileSomethingDiffers)
{
    const QByteArray differing = "date,minutes\n2026-02-09,15\n2026-03-09,20\n";
    const VerbOutcome refused = run(differing);
    EXPECT_EQ(refused.code, exit_code::badInput);
    EXPECT_THAT(refused.err, HasSubstr("1 row differs from what is on file. Nothing was taken"));
    EXPECT_EQ(entries().size(), 14U);
    EXPECT_EQ(run(differing, {QStringLiteral("--take"), QStringLiteral("file")}).code,
              exit_code::done);
    const auto all = entries();
    EXPECT_EQ(all.size(), 15U);
    EXPECT_EQ(all.front().duration, std::chrono::minutes(15));
}

TEST_F(ImportDiaryVerb, OnlySaysWhatItWouldDo)
{
    const std::string before = everyRow(temp.file());
    const VerbOutcome outcome =
        run("date,minutes\n2026-02-09,15\n2026-03-09,20\n2026-02-01,20\n2026-03-10,abc\n",
            {QStringLiteral("--dry-run"), QStringLiteral("--json")});
    EXPECT_EQ(outcome.code, exit_code::done) << outcome.err;
    const QJsonObject report =
        QJsonDocument::fromJson(QByteArray::fromStdString(outcome.out)).object();
    EXPECT_EQ(report[QStringLiteral("done")], false);
    const QJsonObject counts = report[QStringLiteral("counts")].toObject();
    EXPECT_EQ(counts[QStringLiteral("rows")], 4);
    EXPECT_EQ(counts[QStringLiteral("new")], 1);
    EXPECT_EQ(counts[QStringLiteral("conflict")], 1);
    EXPECT_EQ(counts[QStringLiteral("before_start")], 1);
    EXPECT_EQ(counts[QStringLiteral("invalid")], 1);
    const QJsonObject bad = report[QStringLiteral("rows")].toArray().last().toObject();
    EXPECT_EQ(bad[QStringLiteral("line")], 5);
    EXPECT_THAT(bad[QStringLiteral("faults")].toArray().first().toString().toStdString(),
                HasSubstr("“abc” under “minutes” is no length of a session."));
    EXPECT_EQ(everyRow(temp.file()), before);
}

TEST_F(ImportDiaryVerb, AsksForTheOrderOfDatesWhereTheFileDoesNotShowIt)
{
    const QByteArray open = "date,minutes\n9/3/2026,20\n";
    const VerbOutcome asked = run(open);
    EXPECT_EQ(asked.code, exit_code::badInput);
    EXPECT_THAT(asked.err, HasSubstr("--date-order"));
    EXPECT_EQ(run(open, {QStringLiteral("--date-order"), QStringLiteral("dmy")}).code,
              exit_code::done);
    EXPECT_EQ(entries().back().day, day(2026, 3, 9));
}

TEST_F(ImportDiaryVerb, NamesTheColumnsItFoundWhereOneIsMissing)
{
    const VerbOutcome outcome = run("Datum,Dauer\n2026-03-09,20\n");
    EXPECT_EQ(outcome.code, exit_code::badInput);
    EXPECT_THAT(outcome.err, HasSubstr("The file has no column for date. Columns found: Datum, "
                                       "Dauer. Choose one."));
}

TEST_F(ImportDiaryVerb, RemembersColumnsUnderAName)
{
    const QByteArray german = "Datum;Dauer\n09.03.2026;20,5\n";
    const QStringList columns{QStringLiteral("--column"),     QStringLiteral("date=Datum"),
                              QStringLiteral("--column"),     QStringLiteral("minutes=Dauer"),
                              QStringLiteral("--date-order"), QStringLiteral("dmy")};
    EXPECT_EQ(
        run(german, columns + QStringList{QStringLiteral("--remember"), QStringLiteral("Tracker")})
            .code,
        exit_code::done);
    EXPECT_EQ(entries().back().duration, std::chrono::seconds(1230));
    const QByteArray next = "Datum;Dauer\n10.03.2026;20\n";
    EXPECT_EQ(run(next).code, exit_code::done) << "recognised by its headings";
    const VerbOutcome other = run("date,minutes\n2026-03-11,20\n",
                                  {QStringLiteral("--mapping"), QStringLiteral("Tracker")});
    EXPECT_EQ(other.code, exit_code::badInput);
    EXPECT_THAT(run(next, {QStringLiteral("--mapping"), QStringLiteral("Other")}).err,
                HasSubstr("“Other” is not remembered. There are: Tracker."));
}

TEST_F(ImportDiaryVerb, BelievesTheFileMoreThanTheOrderThatIsRemembered)
{
    must(store->write(author(), "remember columns", [](db::Writing& writing) {
        db::saveDiaryMapping(writing,
                             {.name = "Tracker",
                              .dateOrder = DateOrder::dayMonthYear,
                              .columns = {{"Datum", {.column = DiaryColumn::date}},
                                          {"Dauer", {.column = DiaryColumn::minutes}}}},
                             0);
    }));
    // No month has the number 28; 03/04 is 4 March then.
    const QByteArray monthFirst = "Datum;Dauer\n02/28/2026;20\n03/04/2026;20\n";
    const VerbOutcome said = run(monthFirst, {QStringLiteral("--date-order"), QStringLiteral("dmy"),
                                              QStringLiteral("--dry-run")});
    EXPECT_THAT(said.out, HasSubstr("0 rows would be taken over")) << "what is said counts";
    EXPECT_EQ(run(monthFirst).code, exit_code::done);
    EXPECT_EQ(entries().size(), 16U);
    EXPECT_EQ(entries().back().day, day(2026, 3, 4));
}

TEST_F(ImportDiaryVerb, SaysThatTheDiaryIsCompleteWhenAskedTo)
{
    const VerbOutcome outcome =
        run(newRows, {QStringLiteral("--through"), QStringLiteral("2026-03-10")});
    EXPECT_EQ(outcome.code, exit_code::done) << outcome.err;
    const auto through = must(store->read(
        [&](db::Reading& reading) { return db::diaryReceivedThrough(reading, ids->course); }));
    EXPECT_EQ(through, day(2026, 3, 10));
    EXPECT_THAT(run(newRows, {QStringLiteral("--through"), QStringLiteral("2026-03-13")}).err,
                HasSubstr("lies outside the course or after today"));
}

TEST(SampleDiary, IsTakenOverWithoutAComplaint)
{
    const TempStore temp;
    const QString sample = temp.folder() + QStringLiteral("/sample.csv");
    const VerbOutcome demo =
        runVerb(demoVerb, {temp.file(), QStringLiteral("--sample-diary"), sample});
    ASSERT_EQ(demo.code, exit_code::done) << demo.err;
    const QString patient = QString::fromStdString(demo.out)
                                .section(QStringLiteral("patient "), 1)
                                .section(QLatin1Char(','), 0, 0);
    const VerbOutcome imported =
        runVerb(importDiaryVerb, {sample, QStringLiteral("--store"), temp.file(),
                                  QStringLiteral("--patient"), patient, QStringLiteral("--json")});
    ASSERT_EQ(imported.code, exit_code::done) << imported.err;
    const QJsonObject report =
        QJsonDocument::fromJson(QByteArray::fromStdString(imported.out)).object();
    const QJsonObject counts = report[QStringLiteral("counts")].toObject();
    EXPECT_GE(counts[QStringLiteral("rows")].toInt(), 5);
    EXPECT_EQ(counts[QStringLiteral("new")], counts[QStringLiteral("rows")]);
}

TEST_F(ImportDiaryVerb, SaysWhatItCantUnderstand)
{
    EXPECT_EQ(run(newRows, {QStringLiteral("--take"), QStringLiteral("both")}).code,
              exit_code::usage);
    EXPECT_EQ(run(newRows, {QStringLiteral("--column"), QStringLiteral("mood=x")}).code,
              exit_code::usage);
    const VerbOutcome twice =
        run(newRows, {QStringLiteral("--column"), QStringLiteral("minutes=comfort"),
                      QStringLiteral("--column"), QStringLiteral("comfort=comfort")});
    EXPECT_EQ(twice.code, exit_code::usage);
    EXPECT_THAT(twice.err, HasSubstr("--column: “comfort” is given twice."));
    EXPECT_EQ(runVerb(importDiaryVerb, {QStringLiteral("--help")}).code, exit_code::done);
    EXPECT_EQ(run("").code, exit_code::badInput);
}
