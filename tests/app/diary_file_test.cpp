// SPDX-License-Identifier: GPL-3.0-or-later
// Diary files as they come: the examples of RFC 4180, section 2, JSON of RFC 8259, encodings
// (Unicode's mapping table CP1252.TXT for Windows-1252), and text that means harm.
#include "app/diary_import/diary_file.h"
#include "app/diary_import/diary_matching.h"
#include "tests/support/temp_store.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using testing::ElementsAre;
using testing::HasSubstr;
using tests::must;

namespace
{

DiaryFile read(const QByteArray& bytes, const ReadingWish& wish = {})
{
    return must(readDiary(bytes, QStringLiteral("diary"), wish));
}

std::string refusal(const QByteArray& bytes, const ReadingWish& wish = {})
{
    const auto file = readDiary(bytes, QStringLiteral("diary"), wish);
    return file ? "was read" : file.error().detail;
}

std::vector<std::string> cells(const DiaryFile& file, std::size_t row)
{
    std::vector<std::string_view> views;
    file.table.cellsOf(row, views);
    return {views.begin(), views.end()};
}

} // namespace

TEST(DiaryCsv, ReadsTheExamplesOfRfc4180)
{
    // 1 and 2: CRLF, the last line with or without it.
    EXPECT_THAT(cells(read("h1,h2,h3\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"), 1),
                ElementsAre("zzz", "yyy", "xxx"));
    EXPECT_THAT(cells(read("h1,h2,h3\r\naaa,bbb,ccc\r\nzzz,yyy,xxx"), 1),
                ElementsAre("zzz", "yyy", "xxx"));
    // 3: headings.
    EXPECT_THAT(read("field_name,field_name2\r\naaa,bbb\r\n").table.headings(),
                ElementsAre("field_name", "field_name2"));
    // 4: blanks belong to their field.
    EXPECT_THAT(cells(read("h1,h2\r\na , b\r\n"), 0), ElementsAre("a ", " b"));
    // 5: fields in quotes.
    EXPECT_THAT(cells(read("h1,h2,h3\r\n\"aaa\",\"bbb\",\"ccc\"\r\n"), 0),
                ElementsAre("aaa", "bbb", "ccc"));
    // 6: line breaks in quotes.
    const DiaryFile broken = read("h1,h2,h3\r\n\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx\r\n");
    EXPECT_THAT(cells(broken, 0), ElementsAre("aaa", "b\r\nbb", "ccc"));
    EXPECT_EQ(broken.table.lineOf(0), 2);
    EXPECT_EQ(broken.table.lineOf(1), 4) << "a row is named by the line it begins on";
    // 7: quotes are doubled.
    EXPECT_THAT(cells(read("h1,h2,h3\r\n\"aaa\",\"b\"\"bb\",\"ccc\"\r\n"), 0),
                ElementsAre("aaa", "b\"bb", "ccc"));
}

TEST(DiaryCsv, RecognisesWhatStandsBetweenCells)
{
    EXPECT_EQ(read("date,minutes\n2026-03-09,20\n").separator, ',');
    const DiaryFile semicolons = read("date;minutes;mA\n2026-03-09;20,5;42,5\n");
    EXPECT_EQ(semicolons.separator, ';');
    EXPECT_THAT(cells(semicolons, 0), ElementsAre("2026-03-09", "20,5", "42,5"));
    EXPECT_EQ(read("date\tminutes\n2026-03-09\t20\n").separator, '\t');
    EXPECT_EQ(read("Datum;Dauer, min\n1;2\n", {.separator = ','}).separator, ',')
        << "what a person says counts";
}

TEST(DiaryCsv, RecognisesTheEncoding)
{
    const DiaryFile marked = read("\xEF\xBB\xBF"
                                  "date,remark\n1,M\xC3\xBCller\n");
    EXPECT_EQ(marked.encoding, TextEncoding::utf8);
    EXPECT_THAT(marked.table.headings(), ElementsAre("date", "remark"));
    EXPECT_EQ(cells(marked, 0)[1], "Müller");
    const DiaryFile latin = read("date,remark\n1,M\xFCller \x80 \x93so\x94\n");
    EXPECT_EQ(latin.encoding, TextEncoding::windows1252);
    EXPECT_EQ(cells(latin, 0)[1], "Müller € “so”");
    EXPECT_THAT(refusal("date,remark\n1,\xFC\x81\n"), HasSubstr("neither UTF-8 nor Windows-1252"));
    EXPECT_THAT(refusal("date\n\xFC\n", {.encoding = TextEncoding::utf8}), HasSubstr("not UTF-8"));
    EXPECT_THAT(refusal(QByteArray("\xFF\xFE"
                                   "d\0a\0",
                                   6)),
                HasSubstr("UTF-16"));
}

TEST(DiaryCsv, ReadsRowsThatEndWithCarriageReturnsAlone)
{
    const DiaryFile old = read("date,minutes\r2026-03-09,20\r2026-03-10,15\r");
    EXPECT_EQ(old.table.rowCount(), 2U);
    EXPECT_EQ(old.table.lineOf(1), 3);
}

TEST(DiaryCsv, LeavesBlankRowsOutAndCountsTheirLines)
{
    const DiaryFile file = read("\ndate,minutes\n\n2026-03-09,20\n  \n2026-03-10,20\n");
    ASSERT_EQ(file.table.rowCount(), 2U);
    EXPECT_EQ(file.table.lineOf(0), 4);
    EXPECT_EQ(file.table.lineOf(1), 6);
}

TEST(DiaryCsv, RefusesHarmfulFilesWithASentence)
{
    EXPECT_THAT(refusal(QByteArray("date,min\n2026-03-09,2\0"
                                   "0\n",
                                   23)),
                HasSubstr("line 2 holds a NUL"));
    EXPECT_THAT(refusal("date,remark\n2026-03-09,\"" + QByteArray(10 * 1024 * 1024, 'x') + "\"\n"),
                HasSubstr("line 2 has a cell of more than 64 kB"));
    const QByteArray manyLines = QByteArray("2026-03-10,\n").repeated(20'000);
    EXPECT_THAT(refusal("date,remark\n2026-03-09,\"" + manyLines),
                HasSubstr("line 2 has a cell of more than 64 kB; close the quote"));
    EXPECT_THAT(refusal("date,remark\n2026-03-09,\"open\n2026-03-10,\n"),
                HasSubstr("a quote of the row that begins on line 2 is never closed"));
    EXPECT_THAT(refusal("date,remark\n2026-03-09,a\"b\"\n"), HasSubstr("line 2 has a quote"));
    EXPECT_THAT(refusal("date,date\n1,2\n"), HasSubstr("“date” is there twice"));
    EXPECT_THAT(refusal(""), HasSubstr("no headings"));
}

TEST(DiaryCsv, TakesACellOf64KilobytesAndNoneLonger)
{
    constexpr qsizetype most = qsizetype(64) * 1024;
    const QByteArray heading = "date,remark\n2026-03-09,\"";
    EXPECT_EQ(cells(read(heading + QByteArray(most, 'x') + "\"\n2026-03-10,\n"), 0)[1].size(),
              std::size_t(most));
    EXPECT_THAT(refusal(heading + QByteArray(most + 1, 'x') + "\"\n"),
                HasSubstr("line 2 has a cell of more than 64 kB"));
}

TEST(DiaryCsv, KeepsFormulasAsTheTextTheyAre)
{
    EXPECT_EQ(cells(read("date,remark\n1,\"=HYPERLINK(\"\"http://x\"\",\"\"y\"\")\"\n"), 0)[1],
              "=HYPERLINK(\"http://x\",\"y\")");
}

TEST(DiaryJson, HasTheNamesOfTheColumns)
{
    const DiaryFile file = read(R"({"format": "quadrille-diary", "version": 1, "entries": [
        {"date": "2026-03-09", "session": 1, "minutes": 20.5, "amplitude_ma_channel_1": 42.1,
         "comfort": 7, "skin": null, "remark": "M\u00fcller"},
        {"date": "2026-03-10", "minutes": 0}]})");
    EXPECT_TRUE(file.isJson);
    ASSERT_EQ(file.table.rowCount(), 2U);
    const auto columns = matchedColumns(file.table, {});
    const auto rows = reportedRows(file, columns, rulesFrom(file, {}, {}));
    ASSERT_TRUE(rows);
    const ReportedRow& first = rows->front();
    EXPECT_TRUE(first.faults.empty());
    EXPECT_EQ(first.duration, std::chrono::seconds(1230));
    EXPECT_EQ(first.amplitudes.front().second, Amplitude::fromCount(42'100));
    EXPECT_EQ(first.remark, "Müller");
    EXPECT_FALSE(first.skin) << "null is not known";
    EXPECT_EQ(rows->back().line, 2) << "entries are counted";
}

TEST(DiaryJson, IsRefusedWithASentence)
{
    const auto entries = [](const char* list) {
        return QByteArray(R"({"format": "quadrille-diary", "version": 1, "entries": [)") + list +
               "]}";
    };
    EXPECT_THAT(refusal("{\"format\": "), HasSubstr("no JSON"));
    EXPECT_THAT(refusal("[1, 2]"), HasSubstr("quadrille-diary"));
    EXPECT_THAT(refusal(R"({"format": "quadrille-diary", "version": 2, "entries": []})"),
                HasSubstr("version"));
    EXPECT_THAT(refusal(entries(R"({"date": "2026-03-09", "mood": 3})")), HasSubstr("“mood”"));
    EXPECT_THAT(refusal(entries(R"({"date": "2026-03-09", "minutes": "20"})")),
                HasSubstr("“minutes” must be a number"));
    EXPECT_THAT(refusal(entries(R"({"date": 20260309})")), HasSubstr("must be a text"));
    EXPECT_THAT(refusal(entries("3")), HasSubstr("entry 1 is no object"));
}

TEST(DiaryColumns, AreRememberedBySource)
{
    const DiaryFile file = read("Datum;Dauer\n09.03.2026;20\n");
    const ColumnMap columns{ColumnMeaning{.column = DiaryColumn::date},
                            ColumnMeaning{.column = DiaryColumn::minutes}};
    EXPECT_TRUE(missingColumn(matchedColumns(file.table, {})));
    const db::DiaryMapping known =
        mappingOf("Tracker", file, columns, {.dateOrder = DateOrder::dayMonthYear});
    EXPECT_EQ(columnsBy(known, file.table), columns);
    EXPECT_EQ(mappingFor(file.table, {known}), known);
    EXPECT_EQ(mappingFor(read("date,minutes\n1,2\n").table, {known}), std::nullopt);
}

TEST(DiaryColumns, KeepTheirRememberedFormsOnlyWhereTheFileLeavesThemOpen)
{
    const ReadingRules remembered{.dateOrder = DateOrder::dayMonthYear,
                                  .durationForm = DurationForm::hoursMinutes};
    const auto rules = [&](const QByteArray& bytes) {
        const DiaryFile file = read(bytes);
        const FileEvidence evidence = evidenceOf(file, matchedColumns(file.table, {}));
        return rulesFrom(file, evidence, whereAsked(remembered, evidence));
    };
    const ReadingRules open = rules("date,minutes\n3/4/2026,1:05\n");
    EXPECT_EQ(open.dateOrder, DateOrder::dayMonthYear);
    EXPECT_EQ(open.durationForm, DurationForm::hoursMinutes);
    // 25 is no month, and no session takes 25 h.
    const ReadingRules shown = rules("date,minutes\n3/25/2026,25:10\n3/4/2026,1:05\n");
    EXPECT_EQ(shown.dateOrder, DateOrder::monthDayYear);
    EXPECT_EQ(shown.durationForm, DurationForm::minutesSeconds);
}

TEST(DiaryColumns, OfJsonAreRememberedWithoutAnOrderOfDates)
{
    const DiaryFile file = read(R"({"format": "quadrille-diary", "version": 1, "entries": [
        {"date": "2026-03-09", "minutes": 20}]})");
    const ColumnMap columns = matchedColumns(file.table, {});
    const ReadingRules rules = rulesFrom(file, evidenceOf(file, columns), {});
    EXPECT_EQ(rules.dateOrder, DateOrder::yearMonthDay);
    EXPECT_EQ(mappingOf("App", file, columns, rules).dateOrder, std::nullopt);
}
