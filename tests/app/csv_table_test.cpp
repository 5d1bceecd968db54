// SPDX-License-Identifier: GPL-3.0-or-later
// Against RFC 4180, section 2, rules 1 to 7.
#include "app/command_line/csv_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

using namespace quadrille;
using namespace quadrille::app;
using testing::HasSubstr;

namespace
{

const QString name = QStringLiteral("cases.csv");

CsvTable read(const QByteArray& text)
{
    const Result<CsvTable> table = csvTableFrom(text, name);
    EXPECT_TRUE(table.has_value()) << (table ? "" : table.error().detail);
    return table ? *table : CsvTable{};
}

std::string problemOf(const QByteArray& text)
{
    const Result<CsvTable> table = csvTableFrom(text, name);
    EXPECT_FALSE(table.has_value());
    return table ? std::string() : table.error().detail;
}

QStringList list(const char* cells)
{
    return QString::fromUtf8(cells).split(QLatin1Char('|'));
}

} // namespace

TEST(CsvTable, ReadsRowsThatEndWithEitherLineEnd)
{
    for (const QByteArray text : {"a,b\n1,2\n3,4\n", "a,b\r\n1,2\r\n3,4\r\n", "a,b\n1,2\r\n3,4"}) {
        const CsvTable table = read(text);
        EXPECT_EQ(table.columns, list("a|b"));
        ASSERT_EQ(table.rows.size(), 2U);
        EXPECT_EQ(table.rows[0].cells, list("1|2"));
        EXPECT_EQ(table.rows[1].cells, list("3|4"));
        EXPECT_EQ(table.rows[1].number, 3);
    }
}

TEST(CsvTable, ReadsQuotedCommasQuotesAndLineEnds)
{
    const CsvTable table =
        read("case,remark\r\nP01,\"4 s on, 12 s off\"\r\nP02,\"said \"\"fine\"\"\"\r\n"
             "P03,\"two\r\nlines\"\r\nP04,plain\r\n");
    ASSERT_EQ(table.rows.size(), 4U);
    EXPECT_EQ(table.rows[0].cells[1], QStringLiteral("4 s on, 12 s off"));
    EXPECT_EQ(table.rows[1].cells[1], QStringLiteral("said \"fine\""));
    EXPECT_EQ(table.rows[2].cells[1], QStringLiteral("two\r\nlines"));
    EXPECT_EQ(table.rows[3].number, 5); // a cell of two lines is one row
}

TEST(CsvTable, KeepsBlanksAsPartOfACell)
{
    EXPECT_EQ(read("a,b\n 1 ,\t2\n").rows[0].cells, list(" 1 |\t2"));
}

TEST(CsvTable, KeepsEmptyCellsAndCountsBlankRows)
{
    const CsvTable table = read("a,b\n\n,\r\n\r\n5,6\n");
    ASSERT_EQ(table.rows.size(), 2U);
    EXPECT_EQ(table.rows[0].cells, list("|"));
    EXPECT_EQ(table.rows[0].number, 3);
    EXPECT_EQ(table.rows[1].number, 5);
}

TEST(CsvTable, ReadsUtf8WithAndWithoutByteOrderMark)
{
    EXPECT_EQ(read("\xEF\xBB\xBFmuskel,µs\nwadenbeinstrecker,3\n").columns, list("muskel|µs"));
    EXPECT_EQ(read("α,b\nβ,2\n").rows[0].cells, list("β|2"));
}

TEST(CsvTable, SaysWhatIsWrongAndWhere)
{
    EXPECT_THAT(problemOf(""), HasSubstr("headings"));
    EXPECT_THAT(problemOf("\n\n"), HasSubstr("headings"));
    EXPECT_THAT(problemOf("a,b\n1,2\n3\n"), HasSubstr("row 3 has 1 cells"));
    EXPECT_THAT(problemOf("a,b\n1,2,3\n"), HasSubstr("row 2 has 3 cells"));
    EXPECT_THAT(problemOf("a,b,a\n1,2,3\n"), HasSubstr("“a” is there twice"));
    EXPECT_THAT(problemOf("a,b\n1,2\n3,4 \"x\"\n"), HasSubstr("row 3 has a quote out of place"));
    EXPECT_THAT(problemOf("a,b\n1,\"2\n"), HasSubstr("row 2 has a quote out of place"));
    EXPECT_THAT(problemOf("a,b\n1,\xE4\n"), HasSubstr("UTF-8"));
}

TEST(CsvTable, OfAFileThatIsNotThereNamesTheFile)
{
    const Result<CsvTable> table = csvTableFromFile(QStringLiteral("no/such/cases.csv"));
    ASSERT_FALSE(table);
    EXPECT_EQ(table.error().code, ErrorCode::cannotRead);
    EXPECT_EQ(table.error().subject, "no/such/cases.csv");
}

TEST(CsvLine, QuotesOnlyWhatNeedsIt)
{
    EXPECT_EQ(csvLine(list("P01|4 s|42.5")), QStringLiteral("P01,4 s,42.5\n"));
    EXPECT_EQ(csvLine({QStringLiteral("a,b"), QStringLiteral("say \"x\""), QStringLiteral("1\n2")}),
              QStringLiteral("\"a,b\",\"say \"\"x\"\"\",\"1\n2\"\n"));
}

TEST(CsvLine, ComesBackAsItWasWritten)
{
    const QStringList cells{QStringLiteral(" a,\"b\"\r\nc "), QString(), QStringLiteral("µ")};
    const CsvTable table = read((QStringLiteral("1,2,3\n") + csvLine(cells)).toUtf8());
    ASSERT_EQ(table.rows.size(), 1U);
    EXPECT_EQ(table.rows[0].cells, cells);
}

// OWASP, CSV Injection: = + - @ tab and carriage return begin what a spreadsheet runs.
TEST(HarmlessCsv, LeadsFormulasByAnApostropheAndLeavesNumbers)
{
    EXPECT_EQ(harmlessCsvLine({QStringLiteral("=1+1"), QStringLiteral("+49 30"),
                               QStringLiteral("-2.5"), QStringLiteral("@SUM"),
                               QStringLiteral("-cmd"), QStringLiteral("a=b"), QString()}),
              QStringLiteral("'=1+1,'+49 30,-2.5,'@SUM,'-cmd,a=b,\n"));
    EXPECT_EQ(harmlessCsvLine({QStringLiteral("\t=1"), QStringLiteral("\r=1")}),
              QStringLiteral("'\t=1,\"'\r=1\"\n"));
}
