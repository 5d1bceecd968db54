// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/figures_case.h"
#include "app/command_line/figures_table.h"
#include "app/command_line/figures_verb.h"
#include "tests/app/verb_outcome.h"
#include "tests/support/reference_table.h"

#include <QFile>
#include <QTemporaryDir>

#include <algorithm>
#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

using namespace quadrille::app;
using quadrille::test::ReferenceTable;
using quadrille::test::runVerb;
using quadrille::test::runVerbOnAFullDisk;
using quadrille::test::VerbOutcome;
using testing::EndsWith;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::StartsWith;

namespace
{

using Outcome = VerbOutcome;

Outcome run(const QStringList& arguments)
{
    return runVerb(figuresVerb, arguments);
}

/// Runs the command on a table that stands in a file of its own.
Outcome runOn(const QByteArray& table)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("cases.csv"));
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(table);
    file.close();
    return run({path});
}

QString referenceFile()
{
    return QStringLiteral(QUADRILLE_TEST_REFERENCE "/model_cases.csv");
}

const QByteArray headings =
    "case_id,frequency_hz,phase_duration_us,amplitude_ma,pad_area_cm2,on_s,off_s,ramp_up_s,"
    "ramp_down_s,ramps_included,session_s,recruitment_model,sessions_per_week\n";

/// One good row with one cell replaced.
QByteArray rowWith(const QByteArray& column, const QByteArray& value)
{
    QByteArrayList cells = QByteArray("P01,50,300,60,50,4,12,1,1,1,1200,0,5").split(',');
    const QByteArrayList columns = headings.trimmed().split(',');
    EXPECT_TRUE(columns.contains(column));
    cells[columns.indexOf(column)] = value;
    return cells.join(',') + '\n';
}

std::string problemWith(const QByteArray& column, const QByteArray& value)
{
    const Outcome outcome = runOn(headings + rowWith(column, value));
    EXPECT_EQ(outcome.code, 1) << column.toStdString() << " " << value.toStdString();
    EXPECT_THAT(outcome.out, IsEmpty());
    EXPECT_THAT(outcome.err, HasSubstr("row 2, column " + column.toStdString()));
    EXPECT_THAT(outcome.err, HasSubstr("“" + value.trimmed().toStdString() + "”"));
    return outcome.err;
}

} // namespace

TEST(FiguresCommand, AgreesWithTheReferenceTableOfSessions)
{
    const Outcome outcome = run({referenceFile()});
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_THAT(outcome.err, IsEmpty());
    const ReferenceTable expected = ReferenceTable::fromFile(referenceFile().toStdString());
    const ReferenceTable computed = ReferenceTable::fromText(outcome.out);
    ASSERT_EQ(computed.rowCount(), 22U);
    ASSERT_EQ(computedColumns().size(), 36);
    for (std::size_t row = 0; row < expected.rowCount(); ++row) {
        SCOPED_TRACE(expected.text(row, "case_id"));
        for (const QString& name : computedColumns()) {
            const std::string column = name.toStdString();
            if (expected.text(row, column).empty()) {
                EXPECT_THAT(computed.text(row, column), IsEmpty()) << column;
                continue;
            }
            const double value = expected.number(row, column);
            // Model columns are given to 1e-6, the others to every printed digit.
            const double tolerance = modelColumns().contains(name) ? 2e-7 : 1e-7;
            EXPECT_NEAR(computed.number(row, column), value, tolerance * std::abs(value)) << column;
        }
        for (const char* column : {"case_id", "amplitude_ma", "contractions_full", "pulses",
                                   "pulses_per_contraction", "on_time_s"}) {
            EXPECT_EQ(computed.text(row, column), expected.text(row, column)) << column;
        }
    }
}

TEST(FiguresCommand, WritesItsColumnsBehindThoseItRead)
{
    const Outcome outcome = runOn(headings + rowWith("case_id", "P01"));
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_THAT(outcome.out,
                StartsWith(headings.trimmed().toStdString() + ",stim_s,plateau_s,cycle_s,"));
    EXPECT_THAT(outcome.out, HasSubstr(",km_end,tau1_end_ms\nP01,50,300,60,50,4,12,"));
    // Worked by hand: 60 mA × 300 µs at 50 Hz on 50 cm², 75 contractions of 4 s.
    EXPECT_THAT(outcome.out,
                HasSubstr(",4,2,16,75,0,75,75,0,300,0.25,3,200,15000,18,0.36,10.392305,5.1961524,"
                          "0.2078461,1.08,0.27,375,1500,75000,1350,1,"));
}

TEST(FiguresCommand, ReadsColumnsInAnyOrderAndKeepsOthersAsTheyAre)
{
    const Outcome outcome =
        runOn("\xEF\xBB\xBFremark,session_s,sessions_per_week,recruitment_model,ramps_included,"
              "ramp_down_s,ramp_up_s,off_s,on_s,pad_area_cm2,amplitude_ma,phase_duration_us,"
              "frequency_hz\r\n\"thin, µ\",300,7,0,1,0,0,7.5,2.5,32,42.5,250,33\r\n");
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    const ReferenceTable computed = ReferenceTable::fromText(outcome.out);
    EXPECT_EQ(computed.text(0, "remark"), "thin, µ");
    EXPECT_EQ(computed.text(0, "amplitude_ma"), "42.5");
    EXPECT_EQ(computed.text(0, "pulses_per_contraction"), "83"); // case P20 of the table
    EXPECT_EQ(computed.text(0, "phase_charge_uc"), "10.625");
}

TEST(FiguresCommand, ComputesAgainWhatTheTableHadAlready)
{
    const Outcome outcome = runOn("pulses," + headings + "999," + rowWith("case_id", "P01"));
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_THAT(outcome.out, StartsWith("case_id,frequency_hz,"));
    EXPECT_EQ(ReferenceTable::fromText(outcome.out).text(0, "pulses"), "15000");
}

TEST(FiguresCommand, LeavesTheModelsColumnsEmptyWhereTheModelHasNoAnswer)
{
    const Outcome outcome = runOn(headings + rowWith("frequency_hz", "0.5"));
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_THAT(outcome.out, EndsWith(",,,,,,,,,,,,\n"));
    EXPECT_EQ(ReferenceTable::fromText(outcome.out).text(0, "contractions_full"), "75");
}

TEST(FiguresCommand, AnEmptyTableStaysEmpty)
{
    const Outcome outcome = runOn(headings);
    EXPECT_EQ(outcome.code, 0);
    EXPECT_THAT(outcome.out, EndsWith(",tau1_end_ms\n"));
}

TEST(FiguresCommand, SaysWhichCellCannotBeUsedAndWhatIsExpected)
{
    EXPECT_THAT(problemWith("frequency_hz", "fifty"), HasSubstr("from 0.1 to 10000"));
    EXPECT_THAT(problemWith("on_s", "2.5001"), HasSubstr("at most 3 decimals"));
    EXPECT_THAT(problemWith("on_s", "-4"), HasSubstr("from 0.001 to 3600"));
    EXPECT_THAT(problemWith("on_s", ""), HasSubstr("from 0.001 to 3600"));
    EXPECT_THAT(problemWith("phase_duration_us", "300.5"), HasSubstr("a whole number"));
    EXPECT_THAT(problemWith("session_s", "86401"), HasSubstr("to 86400"));
    EXPECT_THAT(problemWith("session_s", "99999999999999999999999"), HasSubstr("to 86400"));
    EXPECT_THAT(problemWith("ramps_included", "yes"), HasSubstr("0 or 1"));
    EXPECT_THAT(problemWith("recruitment_model", "2"), HasSubstr("0 or 1"));
    EXPECT_THAT(problemWith("pad_area_cm2", "0"), HasSubstr("above 0"));
    EXPECT_THAT(problemWith("pad_area_cm2", "nan"), HasSubstr("above 0"));
    EXPECT_THAT(problemWith("pad_area_cm2", "1e2"), HasSubstr("above 0"));
    EXPECT_THAT(problemWith("sessions_per_week", "2.5"), HasSubstr("from 1 to 168"));
    EXPECT_THAT(problemWith("sessions_per_week", "0"), HasSubstr("from 1 to 168"));
}

TEST(FiguresCommand, SaysWhereSettingsContradictEachOther)
{
    EXPECT_THAT(problemWith("ramp_up_s", "3.5"), HasSubstr("ramps"));
    EXPECT_THAT(problemWith("phase_duration_us", "300000"), HasSubstr("overlap"));
    EXPECT_THAT(problemWith("off_s", "0"), HasSubstr("off time"));
    EXPECT_THAT(problemWith("session_s", "3.9"), HasSubstr("session"));
}

TEST(FiguresCommand, WritesNothingWhenALaterRowIsBad)
{
    const Outcome outcome =
        runOn(headings + rowWith("case_id", "P01") + "\n" + rowWith("off_s", "x"));
    EXPECT_EQ(outcome.code, 1);
    EXPECT_THAT(outcome.out, IsEmpty());
    EXPECT_THAT(outcome.err, HasSubstr("row 4, column off_s"));
    EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1);
}

TEST(FiguresCommand, NamesAMissingColumn)
{
    QByteArray fewer = headings;
    fewer.replace(",off_s", "");
    const Outcome outcome = runOn(fewer + "P01,50,300,60,50,4,1,1,1,1200,0,5\n");
    EXPECT_EQ(outcome.code, 1);
    EXPECT_THAT(outcome.err, HasSubstr("column off_s is missing"));
}

TEST(FiguresCommand, TellsHowItIsUsed)
{
    const Outcome help = run({QStringLiteral("--help")});
    EXPECT_EQ(help.code, 0);
    EXPECT_THAT(help.err, IsEmpty());
    for (const QString& column : inputColumns() + computedColumns()) {
        EXPECT_THAT(help.out, HasSubstr(column.toStdString()));
    }
    EXPECT_EQ(run({}).code, 2);
    EXPECT_EQ(run({QStringLiteral("a.csv"), QStringLiteral("b.csv")}).code, 2);
    EXPECT_EQ(run({QStringLiteral("--wrong")}).code, 2);
    const Outcome absent = run({QStringLiteral("no/such/cases.csv")});
    EXPECT_EQ(absent.code, 1);
    EXPECT_THAT(absent.err, HasSubstr("no/such/cases.csv"));
}

TEST(FiguresCommand, FailsWhenTheFiguresCannotBeWritten)
{
    const Outcome outcome = runVerbOnAFullDisk(figuresVerb, {referenceFile()});
    EXPECT_EQ(outcome.code, 1);
    EXPECT_THAT(outcome.err, HasSubstr("can’t be written"));
}
