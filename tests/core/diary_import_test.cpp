// SPDX-License-Identifier: GPL-3.0-or-later
// What taking over a file would do. The course runs from Monday 9 February 2026 to Sunday 8 March,
// today is Thursday 12 March; each state is told from the rules of the diary by hand.
#include "tests/support/fixed_clock.h"

#include "core/diary_form.h"
#include "core/diary_import.h"

#include <gtest/gtest.h>

using namespace quadrille;
using std::chrono::minutes;
using tests::day;

namespace
{

class DiaryImporting : public testing::Test
{
protected:
    DiaryImporting()
    {
        Course& course = onFile.records.course;
        course.id = CourseId(7);
        course.startDate = day(2026, 2, 9);
        course.endDate = day(2026, 3, 31);
        onFile.today = day(2026, 3, 12);
        Site site;
        site.muscle = "vastus lateralis";
        site.channel = 1;
        Site other = site;
        other.muscle = "vastus medialis";
        other.channel = 2;
        Block block;
        block.sites = {site, other};
        Plan plan;
        plan.fromDate = course.startDate;
        plan.blocks = {block};
        onFile.records.plans = {plan};
        onFile.siteKeys = {{{31, 32}}};
    }

    /// A session of 20 min unless said otherwise.
    ReportedRow& told(unsigned month, unsigned date, int session = 1, int length = 20)
    {
        ReportedRow row;
        row.line = static_cast<int>(rows.size()) + 2;
        row.day = day(2026, month, date);
        row.session = session;
        row.duration = minutes(length);
        rows.push_back(row);
        return rows.back();
    }
    DiaryEntry& ours(unsigned month, unsigned date, int length = 20)
    {
        DiaryEntry entry;
        entry.id = DiaryEntryId(static_cast<std::int64_t>(onFile.records.entries.size()) + 1);
        entry.course = onFile.records.course.id;
        entry.day = day(2026, month, date);
        entry.duration = minutes(length);
        onFile.records.entries.push_back(entry);
        return onFile.records.entries.back();
    }
    /// A row that tells of no session.
    ReportedRow& toldOfDay(unsigned month, unsigned date)
    {
        ReportedRow& row = told(month, date);
        row.session.reset();
        row.duration.reset();
        return row;
    }
    DiaryImport plan() const { return planImport(rows, columns, onFile); }
    std::vector<RowState> states() const
    {
        std::vector<RowState> all;
        for (const DiaryImport import = plan(); const ImportRow& row : import.rows) {
            all.push_back(row.state);
        }
        return all;
    }
    using States = std::vector<RowState>;

    DiaryOnFile onFile;
    std::vector<ReportedRow> rows;
    ColumnMap columns{ColumnMeaning{.column = DiaryColumn::session},
                      ColumnMeaning{.column = DiaryColumn::amplitude, .channel = 1},
                      ColumnMeaning{.column = DiaryColumn::amplitude, .channel = 3},
                      ColumnMeaning{.column = DiaryColumn::amplitude}};
};

} // namespace

TEST_F(DiaryImporting, TellsNewFromSameFromDifferent)
{
    ours(2, 10);
    ours(2, 11, 18);
    told(2, 9);
    told(2, 10);
    told(2, 11);
    EXPECT_EQ(states(), (States{RowState::fresh, RowState::same, RowState::conflict}));
}

TEST_F(DiaryImporting, LeavesOutWhatLiesOutsideTheCourseOrAfterToday)
{
    told(2, 8);
    told(4, 1);
    told(3, 13);
    told(3, 12);
    EXPECT_EQ(states(), (States{RowState::beforeStart, RowState::afterEnd, RowState::afterToday,
                                RowState::fresh}));
}

TEST_F(DiaryImporting, LeavesOutWhatTheFileSaysTwice)
{
    told(2, 9);
    told(2, 9);
    const DiaryImport import = plan();
    EXPECT_EQ(import.rows[1].state, RowState::repeated);
    EXPECT_EQ(import.rows[1].otherLine, 2);
    EXPECT_EQ(import.rowsTaken(), 1U);
}

TEST_F(DiaryImporting, TakesNeitherOfTwoRowsThatContradictEachOther)
{
    told(2, 9);
    told(2, 9, 1, 15);
    const DiaryImport import = plan();
    EXPECT_EQ(import.rows[0].state, RowState::invalid);
    EXPECT_EQ(import.rows[1].state, RowState::invalid);
    EXPECT_EQ(import.rows[1].faults.front().problem, CellProblem::contradictsRow);
    EXPECT_EQ(import.rows[1].faults.front().otherLine, 2);
    EXPECT_EQ(import.rowsTaken(), 0U);
}

TEST_F(DiaryImporting, TakesNoneOfThreeRowsOfOneSessionWhereOneSaysOtherwise)
{
    told(2, 9);
    told(2, 9, 1, 15);
    told(2, 9);
    EXPECT_EQ(states(), (States{RowState::invalid, RowState::invalid, RowState::invalid}));
}

TEST_F(DiaryImporting, LeavesOutADayAlone)
{
    told(2, 9).duration.reset();
    EXPECT_EQ(states(), States{RowState::saysNothing});
}

TEST_F(DiaryImporting, KeepsWhatIsOnFileUntilSomebodySaysOtherwise)
{
    ours(2, 11, 18).comfort = 6;
    told(2, 11);
    DiaryImport import = plan();
    EXPECT_EQ(takeOverOf(import, onFile, std::nullopt).size(), 0U);
    import.takeFileForAll(true);
    const DiaryTakeOver taken = takeOverOf(import, onFile, std::nullopt);
    ASSERT_EQ(taken.changedEntries.size(), 1U);
    EXPECT_EQ(taken.changedEntries.front().duration, minutes(20));
    EXPECT_EQ(taken.changedEntries.front().comfort, 6) << "the file is silent on comfort";
    EXPECT_EQ(taken.changedEntries.front().source, DiarySource::file);
    EXPECT_EQ(taken.changedEntries.front().id, DiaryEntryId(1));
}

TEST_F(DiaryImporting, AsksBeforeItBringsBackAnEntryThatWasWithdrawn)
{
    DiaryEntry& gone = ours(2, 10);
    gone.withdrawn = true;
    gone.comfort = 4;
    gone.contractions = 75;
    gone.amplitudes = {{.site = 31, .amplitude = Amplitude::fromCount(40'000)}};
    told(2, 10);
    const DiaryImport import = plan();
    EXPECT_EQ(import.rows.front().state, RowState::conflict);
    const DiaryEntry& back = import.sessions.front().file;
    EXPECT_FALSE(back.withdrawn);
    EXPECT_EQ(back.duration, minutes(20));
    // What was entered by mistake is not said by the file.
    EXPECT_EQ(back.comfort, std::nullopt);
    EXPECT_EQ(back.contractions, std::nullopt);
    EXPECT_TRUE(back.amplitudes.empty());
}

TEST_F(DiaryImporting, PutsAmplitudesOnTheSiteOfTheirChannel)
{
    told(2, 9).amplitudes = {{1, Amplitude::fromCount(42'500)}};
    const DiaryImport import = plan();
    ASSERT_EQ(import.sessions.size(), 1U);
    EXPECT_EQ(
        import.sessions.front().file.amplitudes,
        (std::vector<SiteAmplitude>{{.site = 31, .amplitude = Amplitude::fromCount(42'500)}}));
}

TEST_F(DiaryImporting, RefusesAnAmplitudeThatBelongsToNoSiteOrToSeveral)
{
    told(2, 9).amplitudes = {{2, Amplitude::fromCount(42'500)}};
    told(2, 10).amplitudes = {{3, Amplitude::fromCount(42'500)}};
    const DiaryImport import = plan();
    EXPECT_EQ(import.rows[0].faults.front().problem, CellProblem::noSiteOnChannel);
    EXPECT_EQ(import.rows[1].faults.front().problem, CellProblem::severalSites);
}

TEST_F(DiaryImporting, DoesNotChooseBetweenTwoColumnsOfOneSite)
{
    const std::string lateral = siteWords(onFile.records.plans.front().blocks.front().sites[0]);
    columns.push_back(ColumnMeaning{.column = DiaryColumn::amplitude, .site = lateral});
    told(2, 9).amplitudes = {{1, Amplitude::fromCount(42'500)}, {4, Amplitude::fromCount(42'500)}};
    told(2, 10).amplitudes = {{1, Amplitude::fromCount(42'500)}, {4, Amplitude::fromCount(40'000)}};
    const DiaryImport import = plan();
    EXPECT_EQ(import.rows[0].state, RowState::fresh);
    EXPECT_EQ(
        import.sessions.front().file.amplitudes,
        (std::vector<SiteAmplitude>{{.site = 31, .amplitude = Amplitude::fromCount(42'500)}}));
    EXPECT_EQ(import.rows[1].faults,
              (std::vector<CellFault>{{.problem = CellProblem::amplitudesDiffer, .column = 4}}));
}

TEST_F(DiaryImporting, KnowsTheSitesOfTheLastBlockInTheWeekAfterThePlanAsTheFormDoes)
{
    // Weeks 1 to 3 up to Sunday 1 March, week 4 up to Sunday 8 March.
    std::vector<Block>& blocks = onFile.records.plans.front().blocks;
    blocks.push_back(blocks.front());
    blocks[0].weeks = 3;
    blocks[1].weeks = 1;
    onFile.siteKeys = {{{31, 32}, {41, 42}}};
    const DiaryForm form = diaryFormOf(onFile.records, onFile.siteKeys, onFile.today);
    for (const auto& [date, site] :
         {std::pair(day(2026, 3, 1), 31), {day(2026, 3, 2), 41}, {day(2026, 3, 9), 41}}) {
        rows.clear();
        told(3, 1).amplitudes = {{1, Amplitude::fromCount(42'500)}};
        rows.front().day = date;
        const DiaryImport import = plan();
        ASSERT_EQ(import.sessions.size(), 1U) << isoDate(date);
        EXPECT_EQ(import.sessions.front().file.amplitudes.front().site, site) << isoDate(date);
        const DiaryFormDay* asked = form.find(date);
        ASSERT_EQ(asked->sites.size(), 2U) << isoDate(date);
        EXPECT_EQ(asked->sites.front().key, site) << isoDate(date);
    }
    EXPECT_EQ(form.find(day(2026, 3, 9))->sessions, 0) << "nothing is asked for";
}

TEST_F(DiaryImporting, PutsTheRemarksOfADayTogether)
{
    told(2, 9, 1).remark = "Morning late";
    told(2, 9, 2).remark = "Evening fine";
    const DiaryImport import = plan();
    ASSERT_EQ(import.days.size(), 1U);
    EXPECT_EQ(import.days.front().file.remark, "Morning late\nEvening fine");
}

TEST_F(DiaryImporting, DoesNotChooseBetweenTwoAnswersOnTheSkinOfADay)
{
    told(2, 9, 1).skin = Skin::nothing;
    told(2, 9, 2).skin = Skin::thereNextDay;
    EXPECT_EQ(states(), (States{RowState::invalid, RowState::invalid}));
}

TEST_F(DiaryImporting, TakesNoneOfThreeRowsOfOneDayWhereOneSaysOtherwiseOfTheSkin)
{
    told(2, 9, 1).skin = Skin::goneWithinTheHour;
    told(2, 9, 2).skin = Skin::thereNextDay;
    told(2, 9, 3).skin = Skin::goneWithinTheHour;
    const DiaryImport import = plan();
    EXPECT_EQ(states(), (States{RowState::invalid, RowState::invalid, RowState::invalid}));
    EXPECT_EQ(import.rows[2].faults,
              (std::vector<CellFault>{
                  {.problem = CellProblem::dayContradictsRow, .otherLine = rows[1].line}}));
    EXPECT_TRUE(import.days.empty());
}

TEST_F(DiaryImporting, CallsARowNewThatAddsARemarkOrTheSkinOfItsDay)
{
    ours(2, 9);
    told(2, 9).remark = "Morning late";
    toldOfDay(2, 9).remark = "Evening fine"; // on line 3
    toldOfDay(2, 9).skin = Skin::goneWithinTheHour;
    toldOfDay(2, 9).remark = "Evening fine";
    const DiaryImport import = plan();
    EXPECT_EQ(states(),
              (States{RowState::fresh, RowState::fresh, RowState::fresh, RowState::repeated}));
    EXPECT_EQ(import.rows[3].otherLine, 3);
    EXPECT_EQ(import.rowsTaken(), 3U);
    const DiaryTakeOver taken = takeOverOf(import, onFile, std::nullopt);
    EXPECT_EQ(taken.size(), 1U) << "the session is on file";
    ASSERT_EQ(taken.days.size(), 1U);
    EXPECT_EQ(taken.days.front().remark, "Morning late\nEvening fine");
    EXPECT_EQ(taken.days.front().skin, Skin::goneWithinTheHour);
}

TEST_F(DiaryImporting, ChoosesOnceForAllRowsThatAddToOneDay)
{
    DiaryDay known;
    known.id = DiaryDayId(1);
    known.day = day(2026, 2, 9);
    known.remark = "Noon";
    onFile.records.days = {known};
    toldOfDay(2, 9).remark = "Morning late";
    toldOfDay(2, 9).remark = "Evening fine";
    DiaryImport import = plan();
    EXPECT_EQ(import.count(RowState::conflict), 2U);
    import.choose(1, true);
    EXPECT_TRUE(import.rows[0].takeFile);
    EXPECT_EQ(import.rowsTaken(), 2U);
    EXPECT_EQ(takeOverOf(import, onFile, std::nullopt).days.size(), 1U);
    import.choose(0, false);
    EXPECT_FALSE(import.rows[1].takeFile);
    EXPECT_EQ(takeOverOf(import, onFile, std::nullopt).size(), 0U);
}

TEST_F(DiaryImporting, NumbersSessionsOfADayWhereTheFileDoesNot)
{
    columns.front().reset();
    told(2, 9).session.reset();
    told(2, 9, 1, 15).session.reset();
    const DiaryImport import = plan();
    EXPECT_EQ(import.rowsTaken(), 2U);
    EXPECT_EQ(import.sessions[1].file.sessionNumber, 2);
}

TEST_F(DiaryImporting, AsksForTheSessionNumberWhereOnlyOneRowLacksIt)
{
    told(2, 9).session.reset();
    const DiaryImport import = plan();
    EXPECT_EQ(import.rows[0].faults.front().problem, CellProblem::sessionNotSaid);
}

TEST_F(DiaryImporting, SaysThatTheDiaryIsCompleteOnlyWhenAskedTo)
{
    told(2, 9);
    const DiaryImport import = plan();
    EXPECT_FALSE(takeOverOf(import, onFile, std::nullopt).receipt);
    const auto receipt = takeOverOf(import, onFile, day(2026, 2, 9)).receipt;
    ASSERT_TRUE(receipt);
    EXPECT_EQ(receipt->throughDate, day(2026, 2, 9));
    EXPECT_EQ(receipt->receivedOn, onFile.today);
    onFile.records.receipts = {{.throughDate = day(2026, 2, 20), .receivedOn = day(2026, 2, 21)}};
    EXPECT_FALSE(takeOverOf(import, onFile, day(2026, 2, 9)).receipt) << "known already";
}

TEST_F(DiaryImporting, GivesTheSameRowsBackAsSame)
{
    told(2, 9).comfort = 7;
    rows.back().skin = Skin::goneWithinTheHour;
    told(2, 10);
    const DiaryTakeOver taken = takeOverOf(plan(), onFile, std::nullopt);
    onFile.records.entries = taken.newEntries;
    onFile.records.days = taken.days;
    EXPECT_EQ(states(), (States{RowState::same, RowState::same}));
}
