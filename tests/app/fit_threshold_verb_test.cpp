// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/command_line.h"
#include "app/command_line/fit_threshold_verb.h"
#include "tests/app/verb_outcome.h"
#include "tests/support/reference_table.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>

#include <algorithm>
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
using testing::Not;
using testing::StartsWith;

namespace
{

using Outcome = VerbOutcome;

Outcome run(const QStringList& arguments)
{
    return runVerb(fitThresholdVerb, arguments);
}

/// Runs the command on a table that stands in a file of its own.
Outcome runOn(const QByteArray& table, const QStringList& options = {})
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("thresholds.csv"));
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(table);
    file.close();
    return run(options + QStringList{path});
}

QJsonArray fitsOn(const QByteArray& table)
{
    const Outcome outcome = runOn(table, {QStringLiteral("--json")});
    EXPECT_EQ(outcome.code, 0) << outcome.err;
    const QJsonDocument json = QJsonDocument::fromJson(QByteArray::fromStdString(outcome.out));
    return json.object().value(QStringLiteral("fits")).toArray();
}

double number(const QJsonValue& object, const std::string& key)
{
    const QJsonValue value = object.toObject().value(QString::fromStdString(key));
    EXPECT_TRUE(value.isDouble()) << key;
    return value.toDouble();
}

ReferenceTable reference(const char* file)
{
    return ReferenceTable::fromFile(std::string(QUADRILLE_TEST_REFERENCE "/") + file);
}

/// The series of the reference table, each as a site. S2 has more decimals than an amplitude can
/// have; it is checked without them in core.
QByteArray referenceSites()
{
    const ReferenceTable points = reference("strength_duration_points.csv");
    QByteArray table = "site,threshold_ma,phase_duration_us\n";
    for (std::size_t row = 0; row < points.rowCount(); ++row) {
        if (points.text(row, "dataset_id") != "S2") {
            table += QByteArray::fromStdString(points.text(row, "dataset_id") + "," +
                                               points.text(row, "threshold_ma") + "," +
                                               points.text(row, "phase_duration_us") + "\n");
        }
    }
    return table;
}

const QByteArray headings = "phase_duration_us,threshold_ma\n";

/// Two thresholds by Weiss' law with 10 mA and 320 µs, worked by hand.
const QByteArray two = headings + "100,42\n400,18\n";

std::string problemOf(const QByteArray& table)
{
    for (const QStringList& options : {QStringList(), QStringList{QStringLiteral("--json")}}) {
        const Outcome outcome = runOn(table, options);
        EXPECT_EQ(outcome.code, 1);
        EXPECT_THAT(outcome.out, IsEmpty());
        EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1);
        EXPECT_THAT(outcome.err, HasSubstr("thresholds.csv: "));
    }
    return runOn(table).err;
}

} // namespace

// tests/reference/strength_duration_fits.csv; its columns are the names of the JSON.
TEST(FitThresholdCommand, AgreesWithTheReferenceTableOfFits)
{
    const QJsonArray fits = fitsOn(referenceSites());
    ASSERT_EQ(fits.size(), 3);
    const ReferenceTable expected = reference("strength_duration_fits.csv");
    qsizetype site = 0;
    for (std::size_t row = 0; row < expected.rowCount(); ++row) {
        if (expected.text(row, "dataset_id") == "S2") {
            continue;
        }
        SCOPED_TRACE(expected.text(row, "dataset_id"));
        const QJsonValue fit = fits.at(site++);
        EXPECT_EQ(fit.toObject().value(QStringLiteral("site")).toString().toStdString(),
                  expected.text(row, "dataset_id"));
        int compared = 0;
        for (const std::string& column : expected.columns()) {
            if (column != "dataset_id") {
                const double value = expected.number(row, column);
                const double tolerance = column.ends_with("_rmse_ma") ? 1e-7 : 1e-7 * value;
                EXPECT_NEAR(number(fit, column), value, tolerance) << column;
                ++compared;
            }
        }
        EXPECT_EQ(compared, 11);
    }
}

// Worked by hand: 10 (1 + 320 / 100) = 42 mA; at 150 µs 31.333 mA, measured 32 mA.
TEST(FitThresholdCommand, WritesWhatIsLeftOfEachThreshold)
{
    const QJsonValue fit = fitsOn(headings + "100,40\n100,44.000\n400,18\n").first();
    const QJsonArray thresholds = fit.toObject().value(QStringLiteral("thresholds")).toArray();
    ASSERT_EQ(thresholds.size(), 3);
    EXPECT_EQ(number(thresholds[1], "phase_duration_us"), 100.0);
    EXPECT_EQ(number(thresholds[1], "threshold_ma"), 44.0);
    for (const char* law : {"weiss", "weissq", "lapicque"}) {
        const std::string column = std::string(law) + "_residual_ma";
        EXPECT_NEAR(number(thresholds[0], column), -2.0, 1e-9) << law;
        EXPECT_NEAR(number(thresholds[1], column), 2.0, 1e-9) << law;
        EXPECT_NEAR(number(thresholds[2], column), 0.0, 1e-9) << law;
    }
    // Irh (d + tch) = 10 mA × 420 µs.
    EXPECT_NEAR(number(fit, "weiss_least_charge_uc"), 4.2, 1e-9);
    EXPECT_EQ(number(fit, "least_charge_phase_duration_us"), 100.0);
}

TEST(FitThresholdCommand, WritesNullAndTheReasonForALawThatDoesNotFit)
{
    // The first two fall faster than 1/d and weigh most in the current. Charges 10, 8 and 12 µC at
    // 10, 20 and 1000 µs: by hand, slope 1.96 / 0.646867 = 3.0300 mA.
    const QByteArray steep = headings + "10,1000\n20,400\n1000,12\n";
    const QJsonObject fit = fitsOn(steep).first().toObject();
    EXPECT_TRUE(fit.contains(QStringLiteral("weiss_rheobase_ma")));
    EXPECT_TRUE(fit.value(QStringLiteral("weiss_rheobase_ma")).isNull());
    EXPECT_THAT(fit.value(QStringLiteral("weiss_problem")).toString().toStdString(),
                HasSubstr("do not follow this law"));
    EXPECT_FALSE(fit.contains(QStringLiteral("weiss_findings")));
    EXPECT_NEAR(number(fit, "weissq_rheobase_ma"), 3.0300, 5e-5);
    const Outcome text = runOn(steep);
    EXPECT_EQ(text.code, 0);
    EXPECT_THAT(text.out, HasSubstr("do not follow this law"));
    EXPECT_THAT(text.out, HasSubstr("rheobase 3.03\u00a0mA"));
}

TEST(FitThresholdCommand, TellsThePersonTheFitsInWords)
{
    const Outcome outcome = runOn(two);
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_THAT(outcome.err, IsEmpty());
    EXPECT_THAT(outcome.out, Not(HasSubstr("Site")));
    EXPECT_THAT(outcome.out, HasSubstr("rheobase 10.00\u00a0mA, chronaxie 320\u00a0µs"));
    EXPECT_THAT(outcome.out, HasSubstr("4.2\u00a0µC per phase, at 100\u00a0µs"));
    EXPECT_THAT(outcome.out,
                HasSubstr("Lapicque: threshold = rheobase / (1 − exp(−duration / τ))"));
    EXPECT_THAT(outcome.out, HasSubstr("Weiss, Weiss on charge, Lapicque: A curve meets the "
                                       "thresholds of 2 phase durations whether"));
    EXPECT_THAT(outcome.out, Not(HasSubstr("+0.00")));
    EXPECT_THAT(outcome.out, EndsWith("compare sides and dates in one patient.\n"));
    EXPECT_THAT(runOn(headings + "100,40\n100,44\n400,18\n").out, HasSubstr("+2.00"));
}

TEST(FitThresholdCommand, SaysThatAFitIsPoorOrAChronaxieLong)
{
    const std::string poor = runOn(headings + "100,30\n100,54\n400,10\n400,26\n").out;
    EXPECT_THAT(poor, HasSubstr("a poor fit is over 10\u00a0%"));
    EXPECT_THAT(poor, HasSubstr("Source: common practice, no source."));
    const std::string slow = runOn(headings + "100,111\n200,60.5\n500,30.2\n").out;
    EXPECT_THAT(slow, HasSubstr("A chronaxie of 1\u00a0010\u00a0µs is over"));
    EXPECT_THAT(slow, HasSubstr("value from memory, not checked against the text"));
}

TEST(FitThresholdCommand, FitsEachSiteByItself)
{
    const Outcome outcome = runOn("remark,site,phase_duration_us,threshold_ma\r\n"
                                  ",left,100,42\r\n\"tired, sat\",right ,100,84\r\n"
                                  "\r\n,left,400,18\r\n,right,400,36\r\n");
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    const std::size_t left = outcome.out.find("Site: left\n");
    const std::size_t right = outcome.out.find("Site: right\n");
    ASSERT_NE(left, std::string::npos);
    ASSERT_NE(right, std::string::npos);
    EXPECT_LT(left, right);
    EXPECT_THAT(outcome.out.substr(left, right - left), HasSubstr("rheobase 10.00"));
    EXPECT_THAT(outcome.out.substr(right), HasSubstr("rheobase 20.00"));
}

TEST(FitThresholdCommand, SaysWhichCellCannotBeUsedAndWhatIsExpected)
{
    const auto problem = [](const QByteArray& duration, const QByteArray& threshold) {
        return problemOf(headings + "100,42\n\n" + duration + "," + threshold + "\n");
    };
    EXPECT_THAT(problem("0", "18"), HasSubstr("row 4, column phase_duration_us: “0” can’t be used; "
                                              "expected is a whole number from 1 to 1000000."));
    EXPECT_THAT(problem("400.5", "18"), HasSubstr("“400.5” can’t be used"));
    EXPECT_THAT(problem("1000001", "18"), HasSubstr("to 1000000"));
    EXPECT_THAT(problem("", "18"), HasSubstr("column phase_duration_us: “” can’t be used"));
    EXPECT_THAT(problem("400", "0"), HasSubstr("row 4, column threshold_ma: “0” can’t be used; "
                                               "expected is a number from 0.001 to 1000 with at "
                                               "most 3 decimals."));
    EXPECT_THAT(problem("400", "-18"), HasSubstr("“-18”"));
    EXPECT_THAT(problem("400", "18.0001"), HasSubstr("at most 3 decimals"));
    EXPECT_THAT(problem("400", "1000.001"), HasSubstr("to 1000 "));
    EXPECT_THAT(problem("400", "\"18,5\""), HasSubstr("“18,5”"));
    EXPECT_THAT(problem("400", "\"eigh\nteen\""), HasSubstr("“eigh teen”"));
    EXPECT_THAT(
        problemOf("site,phase_duration_us,threshold_ma\nleft,100,42\n ,400,18\n"),
        HasSubstr("row 3, column site: “” can’t be used; expected is the name of the site"));
}

TEST(FitThresholdCommand, SaysWhatATableLacks)
{
    EXPECT_THAT(problemOf("phase_duration_us,amplitude_ma\n100,42\n"),
                HasSubstr("the column threshold_ma is missing"));
    EXPECT_THAT(problemOf("duration,threshold_ma\n100,42\n"),
                HasSubstr("the column phase_duration_us is missing"));
    EXPECT_THAT(problemOf(headings), HasSubstr("no rows below the headings"));
    EXPECT_THAT(problemOf(headings + "100,42\n100,43\n"),
                HasSubstr("at 2 different phase durations or more (here: 1)"));
    EXPECT_THAT(problemOf("site,phase_duration_us,threshold_ma\nleft,100,42\nleft,400,18\n"
                          "right,100,42\n"),
                HasSubstr("site right: A curve needs"));
    EXPECT_THAT(problemOf(headings + "100,18\n400,42\n"), HasSubstr("do not follow this law"));
}

TEST(FitThresholdCommand, TellsHowItIsUsed)
{
    const Outcome help = run({QStringLiteral("--help")});
    EXPECT_EQ(help.code, 0);
    EXPECT_THAT(help.err, IsEmpty());
    EXPECT_THAT(help.out, HasSubstr("  site  "));
    EXPECT_THAT(help.out, HasSubstr("--json"));
    for (const char* file : {"strength_duration_points.csv", "strength_duration_fits.csv"}) {
        const ReferenceTable table = reference(file);
        for (const std::string& column : table.columns()) {
            EXPECT_TRUE(column == "dataset_id" || help.out.find(column) != std::string::npos)
                << column;
        }
    }
    EXPECT_EQ(run({}).code, 2);
    EXPECT_EQ(run({QStringLiteral("a.csv"), QStringLiteral("b.csv")}).code, 2);
    EXPECT_EQ(run({QStringLiteral("--wrong")}).code, 2);
    const Outcome absent = run({QStringLiteral("no/such/thresholds.csv")});
    EXPECT_EQ(absent.code, 1);
    EXPECT_THAT(absent.err, HasSubstr("no/such/thresholds.csv"));
    EXPECT_TRUE(verbNamed(QStringLiteral("fit-threshold")));
}

TEST(FitThresholdCommand, FailsWhenTheFitsCannotBeWritten)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("thresholds.csv"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(two);
    file.close();
    const Outcome outcome = runVerbOnAFullDisk(fitThresholdVerb, {path});
    EXPECT_EQ(outcome.code, 1);
    EXPECT_THAT(outcome.err, HasSubstr("can’t be written"));
}
