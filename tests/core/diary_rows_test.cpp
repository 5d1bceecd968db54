// SPDX-License-Identifier: GPL-3.0-or-later
// Cells and headings of diary files. Ranges are those of the diary (comfort 0 to 10, skin 0 to 3,
// session 1 to 24); values are converted by hand.
#include "tests/support/fixed_clock.h"

#include "core/diary_rows.h"

#include <gtest/gtest.h>

using namespace quadrille;
using std::chrono::minutes;
using std::chrono::seconds;

namespace
{

const ColumnMap allColumns{ColumnMeaning{.column = DiaryColumn::date},
                           ColumnMeaning{.column = DiaryColumn::session},
                           ColumnMeaning{.column = DiaryColumn::minutes},
                           ColumnMeaning{.column = DiaryColumn::contractions},
                           ColumnMeaning{.column = DiaryColumn::amplitude, .channel = 1},
                           ColumnMeaning{.column = DiaryColumn::comfort},
                           ColumnMeaning{.column = DiaryColumn::skin},
                           ColumnMeaning{.column = DiaryColumn::pad},
                           ColumnMeaning{.column = DiaryColumn::remark}};

ReportedRow read(std::vector<std::string_view> cells, const ReadingRules& rules = {})
{
    return reportedRow(2, cells, allColumns.size(), allColumns, rules);
}

/// A row that is well but for one cell.
ReportedRow readWith(std::size_t column, std::string_view cell, const ReadingRules& rules = {})
{
    std::vector<std::string_view> cells{"2026-03-09", "1", "20", "", "", "", "", "", ""};
    cells[column] = cell;
    return read(cells, rules);
}

std::optional<CellProblem> onlyProblem(const ReportedRow& row)
{
    return row.faults.size() == 1 ? std::optional(row.faults.front().problem) : std::nullopt;
}

} // namespace

TEST(DiaryRow, ReadsEveryColumn)
{
    const ReportedRow row =
        read({"2026-03-09", "2", "20.5", "75", "42,5 mA", "7", "2", "lower pad", "Late"});
    EXPECT_TRUE(row.faults.empty());
    EXPECT_EQ(row.day, tests::day(2026, 3, 9));
    EXPECT_EQ(row.session, 2);
    EXPECT_EQ(row.duration, minutes(20) + seconds(30));
    EXPECT_EQ(row.contractions, 75);
    ASSERT_EQ(row.amplitudes.size(), 1U);
    EXPECT_EQ(row.amplitudes.front().second, Amplitude::fromCount(42'500));
    EXPECT_EQ(row.comfort, 7);
    EXPECT_EQ(row.skin, Skin::thereNextDay);
    EXPECT_EQ(row.pad, "lower pad");
    EXPECT_EQ(row.remark, "Late");
}

TEST(DiaryRow, LeavesUnknownWhatIsNotTold)
{
    const ReportedRow row = read({"2026-03-09", "", "20", "", "", "", "", "", ""});
    EXPECT_FALSE(row.comfort || row.skin || row.contractions || row.session);
    EXPECT_TRUE(row.amplitudes.empty());
}

TEST(DiaryRow, ReadsTimesInTheFormThatIsSaid)
{
    EXPECT_EQ(readWith(2, "0:20:30").duration, minutes(20) + seconds(30));
    EXPECT_EQ(onlyProblem(readWith(2, "1:05")), CellProblem::durationFormNotKnown);
    EXPECT_EQ(readWith(2, "1:05", {.durationForm = DurationForm::hoursMinutes}).duration,
              minutes(65));
    EXPECT_EQ(readWith(2, "1:05", {.durationForm = DurationForm::minutesSeconds}).duration,
              seconds(65));
    DurationEvidence evidence;
    evidence.note("1:05");
    EXPECT_TRUE(evidence.isOpen());
    evidence.note("25:10");
    EXPECT_EQ(evidence.form(), DurationForm::minutesSeconds) << "no session takes 25 h";
}

TEST(DiaryRow, SaysWhatCantBeReadAndWhere)
{
    const struct {
        std::size_t column;
        const char* cell;
        CellProblem problem;
    } cases[] = {{0, "", CellProblem::dateMissing},
                 {0, "3/4/2026", CellProblem::dateOrderNotKnown},
                 {1, "25", CellProblem::sessionUnreadable},
                 {1, "0", CellProblem::sessionUnreadable},
                 {2, "abc", CellProblem::minutesUnreadable},
                 {2, "-5", CellProblem::minutesUnreadable},
                 {2, "1441", CellProblem::minutesUnreadable},
                 {2, "=HYPERLINK(\"x\")", CellProblem::minutesUnreadable},
                 {3, "1.000", CellProblem::contractionsUnreadable},
                 {3, "100001", CellProblem::contractionsUnreadable},
                 {4, "1000.001", CellProblem::amplitudeUnreadable},
                 {4, "42.1234", CellProblem::amplitudeUnreadable},
                 {5, "11", CellProblem::comfortUnreadable},
                 {5, "7,5", CellProblem::comfortUnreadable},
                 {6, "4", CellProblem::skinUnreadable},
                 {7, "lower", CellProblem::padWithoutSkin}};
    for (const auto& each : cases) {
        const ReportedRow row = readWith(each.column, each.cell);
        EXPECT_EQ(onlyProblem(row), each.problem) << each.cell;
    }
    EXPECT_EQ(readWith(2, "abc").faults.front().column, 2U);
    EXPECT_EQ(readWith(2, "abc").faults.front().written, "abc");
    const std::string tooLong(mostTextBytes + 1, 'x');
    EXPECT_EQ(onlyProblem(readWith(8, tooLong)), CellProblem::textTooLong);
}

TEST(DiaryRow, NeedsMinutesWhereItTellsOfASession)
{
    EXPECT_EQ(onlyProblem(read({"2026-03-09", "1", "", "", "", "7", "", "", ""})),
              CellProblem::minutesMissing);
    const ReportedRow dayAlone = read({"2026-03-09", "", "", "", "", "", "1", "", "Away"});
    EXPECT_TRUE(dayAlone.faults.empty());
    EXPECT_TRUE(dayAlone.tellsOfDay());
    EXPECT_FALSE(dayAlone.tellsOfSession());
}

TEST(DiaryRow, HasACellForEachColumn)
{
    // RFC 4180, 2, rule 4: each line should contain the same number of fields.
    EXPECT_EQ(onlyProblem(read({"2026-03-09", "1", "20"})), CellProblem::wrongCellCount);
}

TEST(DiaryHeadings, AreKnownByEnglishWordsAndOurOwnNames)
{
    const std::vector<std::string> sites{"vastus lateralis right"};
    const auto column = [&](const char* heading) {
        const auto meaning = meaningOfHeading(heading, sites);
        return meaning ? nameOf(*meaning) : std::string("none");
    };
    EXPECT_EQ(column("Date"), "date");
    EXPECT_EQ(column("Session no."), "session");
    EXPECT_EQ(column("Duration (min)"), "minutes");
    EXPECT_EQ(column("Time (mm:ss)"), "minutes");
    EXPECT_EQ(column("Amplitude 2 (mA)"), "amplitude_ma_channel_2");
    EXPECT_EQ(column("Channel 1"), "amplitude_ma_channel_1");
    EXPECT_EQ(column("mA"), "amplitude_ma");
    EXPECT_EQ(column("Amplitude vastus lateralis, right"),
              "amplitude_ma_site_vastus lateralis right");
    EXPECT_EQ(column("Comfort (0-10)"), "comfort");
    EXPECT_EQ(column("Remarks"), "remark");
    EXPECT_EQ(column("Session length (min)"), "minutes");
    EXPECT_EQ(column("Min"), "minutes");
    // Minutes of a session are neither its number nor an amplitude.
    EXPECT_EQ(column("Session (min)"), "none");
    EXPECT_EQ(column("Amplitude min"), "none");
    EXPECT_EQ(column("Comfort (mm:ss)"), "none");
    EXPECT_EQ(column("Dauer"), "none");
    EXPECT_EQ(column(""), "none");
    EXPECT_EQ(durationFormInHeading("Time (mm:ss)"), DurationForm::minutesSeconds);
    EXPECT_EQ(durationFormInHeading("Time h:mm"), DurationForm::hoursMinutes);
    EXPECT_EQ(durationFormInHeading("Time"), std::nullopt);
}

TEST(DiaryHeadings, ReadEachNameBack)
{
    for (const ColumnMeaning& meaning :
         {ColumnMeaning{.column = DiaryColumn::date}, ColumnMeaning{.column = DiaryColumn::pad},
          ColumnMeaning{.column = DiaryColumn::amplitude},
          ColumnMeaning{.column = DiaryColumn::amplitude, .channel = 3},
          ColumnMeaning{.column = DiaryColumn::amplitude, .site = "soleus left"}}) {
        EXPECT_EQ(columnNamed(nameOf(meaning)), meaning);
    }
    EXPECT_EQ(columnNamed("amplitude_ma_channel_0"), std::nullopt);
}
