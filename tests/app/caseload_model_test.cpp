// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_entry.h"
#include "app/caseload/caseload_model.h"
#include "tests/app/invented_caseload.h"

#include <QAbstractItemModelTester>

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <set>

using namespace quadrille;
using namespace quadrille::app;
using testing::ElementsAre;

namespace
{

const QuantityText english{QLocale(QLocale::English, QLocale::UnitedKingdom)};

/// The heads of groups and the first names, from the top.
std::vector<std::string> linesOf(const CaseloadModel& model)
{
    std::vector<std::string> lines;
    for (int row = 0; row < model.rowCount(); ++row) {
        const CaseloadLine* line = model.lineAt(row);
        lines.push_back(line ? line->name.section(QLatin1Char(' '), 0, 0).toStdString()
                             : model.data(model.index(row, 0)).toString().toStdString());
    }
    return lines;
}

CaseloadWish searching(const QString& text)
{
    CaseloadWish wish;
    wish.search = text;
    return wish;
}

class Caseload : public testing::Test
{
protected:
    Caseload()
        : model(source, english)
        , tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal)
    {
        model.reload();
    }
    QString cell(int row, CaseloadColumn column) const
    {
        return model.data(model.index(row, static_cast<int>(column))).toString();
    }

    InventedSource source;
    CaseloadModel model;
    QAbstractItemModelTester tester;
};

} // namespace

TEST_F(Caseload, ThoseWhoWaitStandFirstByReasonThenByName)
{
    EXPECT_THAT(linesOf(model),
                ElementsAre("Needs attention, 5", "Édouard", "Wanda", "Desmond", "Imran", "Tom",
                            "Nothing waiting, 10", "Agnes", "Bohdan", "Gwen", "Jonas", "Lucía",
                            "Odile", "Petra", "Ravi", "Solveig", "Yetunde"));
}

TEST_F(Caseload, SortedByNameThePeopleKeepTheirGroups)
{
    CaseloadWish wish;
    wish.sort = CaseloadSort::name;
    wish.filter = CaseloadFilter::needsAttention;
    model.setWish(wish);
    EXPECT_THAT(linesOf(model),
                ElementsAre("Needs attention, 5", "Desmond", "Édouard", "Imran", "Tom", "Wanda"));
}

TEST_F(Caseload, SortedByWeekTheNumberCountsAndNotItsText)
{
    CaseloadWish wish;
    wish.sort = CaseloadSort::week;
    wish.filter = CaseloadFilter::needsAttention;
    model.setWish(wish);
    // Weeks 1, 2, 3, 4 and 12: as text, 12 would stand before 2.
    EXPECT_THAT(linesOf(model),
                ElementsAre("Needs attention, 5", "Édouard", "Wanda", "Desmond", "Imran", "Tom"));
}

TEST_F(Caseload, EndedCoursesStandBehindTheirOwnFilter)
{
    CaseloadWish wish;
    wish.filter = CaseloadFilter::ended;
    model.setWish(wish);
    EXPECT_THAT(linesOf(model), ElementsAre("Ended, 2", "Miriam", "Nils"));
}

TEST_F(Caseload, ASearchFindsEndedCoursesToo)
{
    model.setWish(searching(QStringLiteral("knee replacement")));
    EXPECT_THAT(linesOf(model), ElementsAre("Nothing waiting, 1", "Agnes", "Ended, 1", "Miriam"));
}

TEST_F(Caseload, ASearchLooksAtReferenceProblemAndMuscle)
{
    model.setWish(searching(QStringLiteral("1009")));
    EXPECT_THAT(linesOf(model), ElementsAre("Needs attention, 1", "Tom"));
    model.setWish(searching(QStringLiteral("wrist left")));
    EXPECT_THAT(linesOf(model), ElementsAre("Nothing waiting, 1", "Odile"));
    model.setWish(searching(QStringLiteral("dunmore")));
    EXPECT_THAT(linesOf(model), ElementsAre("Nothing waiting, 1", "Solveig"));
}

TEST_F(Caseload, CountsBehindTheFiltersFollowTheSearch)
{
    EXPECT_EQ(model.arrangement().all, 15);
    EXPECT_EQ(model.arrangement().needsAttention, 5);
    EXPECT_EQ(model.arrangement().ended, 2);
    model.setWish(searching(QStringLiteral("knee")));
    EXPECT_EQ(model.arrangement().all, 3);
    EXPECT_EQ(model.arrangement().needsAttention, 1);
    EXPECT_EQ(model.arrangement().ended, 1);
}

TEST_F(Caseload, ALineOfTheDeskShowsOnlyWhatLiesUnderIt)
{
    CaseloadWish wish;
    wish.topic = DeskTopic::draftsToIssue;
    model.setWish(wish);
    EXPECT_THAT(linesOf(model), ElementsAre("Needs attention, 2", "Wanda", "Desmond"));
    wish.topic = DeskTopic::plansEndingSoon;
    model.setWish(wish);
    EXPECT_THAT(linesOf(model), ElementsAre("Needs attention, 2", "Imran", "Tom"));
}

TEST(DeskTopics, APlanThatHasEndedIsNoneThatEndsSoon)
{
    CaseloadLine line;
    line.reasons = {{AttentionReason::planOver}};
    EXPECT_TRUE(isUnder(DeskTopic::plansEnded, line));
    EXPECT_FALSE(isUnder(DeskTopic::plansEndingSoon, line));
    line.reasons = {{AttentionReason::lastWeek}};
    EXPECT_FALSE(isUnder(DeskTopic::plansEnded, line));
}

TEST_F(Caseload, ARowSaysWhoWhatWhenAndWhy)
{
    const int row = *model.rowOf(PatientId(1));
    EXPECT_EQ(cell(row, CaseloadColumn::name), QStringLiteral("Desmond Achterby\n80 years"));
    EXPECT_EQ(cell(row, CaseloadColumn::course),
              QStringLiteral("Both sides: Quadriceps\nFrailty after a hospital stay"));
    EXPECT_EQ(cell(row, CaseloadColumn::week), QStringLiteral("3 of 8"));
    EXPECT_EQ(cell(row, CaseloadColumn::plan), QStringLiteral("Plan 1\nsince 24 Feb 2026"));
    EXPECT_EQ(cell(row, CaseloadColumn::attention),
              QStringLiteral("Draft not issued\nplan 1 stays in force"));
    const QModelIndex index = model.index(row, 1);
    EXPECT_EQ(index.data(Qt::AccessibleTextRole).toString(),
              QStringLiteral("Desmond Achterby, 80 years. Both sides: Quadriceps, Frailty after a "
                             "hospital stay. week 3 of 8. Plan 1, since 24 Feb 2026. Draft not "
                             "issued, plan 1 stays in force"));
}

TEST(CaseloadEntries, ACourseThatStandsStillSaysSoInPlaceOfThePlansDay)
{
    auto rows = inventedCaseload();
    const auto agnes = std::ranges::find_if(rows, [](const db::CaseloadRow& row) {
        return row.patient.name.starts_with("Agnes") && !row.plans.empty();
    });
    ASSERT_NE(agnes, rows.end());
    agnes->pauses = {{.fromDate = inventedToday() - std::chrono::days(3), .reason = "holiday"}};
    const auto planWords = [&] {
        return entryOf(*agnes, {}, inventedToday(), english).plan.second;
    };
    EXPECT_TRUE(planWords().startsWith(QStringLiteral("paused since ")))
        << planWords().toStdString();
    agnes->pauses.front().toDate = inventedToday();
    EXPECT_TRUE(planWords().startsWith(QStringLiteral("paused until ")));
    agnes->pauses.front().toDate = inventedToday() - std::chrono::days(1);
    EXPECT_TRUE(planWords().startsWith(QStringLiteral("since "))) << "it goes on";
    agnes->pauses.front() = {.fromDate = inventedToday(), .reason = {}, .withdrawn = true};
    EXPECT_TRUE(planWords().startsWith(QStringLiteral("since "))) << "entered by mistake";
}

TEST_F(Caseload, TheOtherReasonsStandInTheTooltip)
{
    const int row = *model.rowOf(PatientId(14));
    EXPECT_EQ(cell(row, CaseloadColumn::attention),
              QStringLiteral("No plan yet\na draft waits to be issued"));
    const QModelIndex index = model.index(row, static_cast<int>(CaseloadColumn::attention));
    EXPECT_TRUE(
        index.data(Qt::ToolTipRole).toString().endsWith(QStringLiteral("Draft not issued")));
}

TEST_F(Caseload, APatientWithoutACourseAndACourseToBeginSaySo)
{
    EXPECT_EQ(cell(*model.rowOf(PatientId(16)), CaseloadColumn::attention),
              QStringLiteral("no course yet"));
    const int begins = *model.rowOf(PatientId(4));
    EXPECT_EQ(cell(begins, CaseloadColumn::attention), QStringLiteral("begins Mon 16 Mar 2026"));
    EXPECT_EQ(cell(begins, CaseloadColumn::week), QStringLiteral("plan of 10"));
    EXPECT_EQ(cell(begins, CaseloadColumn::plan), QStringLiteral("Plan 1\nfrom 16 Mar 2026"));
}

TEST_F(Caseload, HeadsOfGroupsCannotBeChosen)
{
    EXPECT_TRUE(model.isGroupHead(0));
    EXPECT_EQ(model.flags(model.index(0, 0)), Qt::NoItemFlags);
    EXPECT_TRUE(model.flags(model.index(1, 1)).testFlag(Qt::ItemIsSelectable));
}

TEST_F(Caseload, WhatWasHandedOutOutlivesAChangeOfRows)
{
    const QVariant kept = model.index(1, 1).data(CaseloadModel::EntryRole);
    source.held.clear();
    model.reload();
    EXPECT_EQ(model.rowCount(), 0);
    EXPECT_EQ(kept.value<CaseloadEntryPointer>()->name.first, QStringLiteral("Édouard Quillan"));
}

TEST_F(Caseload, WhatCannotBeReadLeavesTheListAsItWas)
{
    source.readable = false;
    source.held.clear();
    model.reload();
    EXPECT_EQ(model.rowCount(), 17);
}

// Without the general tester of models: it fetches more while a reset is still being announced.
TEST(CaseloadPages, EndedCoursesArriveAPageAtATime)
{
    InventedSource source(inventedCaseload(250));
    CaseloadModel model(source, english);
    for (db::CaseloadRow& row : source.held) {
        row.course->endDate = inventedToday() - std::chrono::days(1);
    }
    model.reload();
    CaseloadWish wish;
    wish.filter = CaseloadFilter::ended;
    model.setWish(wish);
    EXPECT_EQ(model.rowCount(), 1 + CaseloadModel::endedPage);
    EXPECT_EQ(model.index(0, 0).data().toString(), QStringLiteral("Ended, 250"));
    EXPECT_EQ(model.arrangement().ended, 250);
    std::set<std::int64_t> seen;
    while (model.canFetchMore({})) {
        model.fetchMore({});
    }
    for (int row = 1; row < model.rowCount(); ++row) {
        seen.insert(model.lineAt(row)->patient.key());
    }
    EXPECT_EQ(model.rowCount(), 251);
    EXPECT_EQ(seen.size(), 250U) << "nobody twice, nobody left out";
}

TEST(CaseloadPages, ASearchThatMatchesNearlyEverybodySaysSoManyOrMoreAndScrollsToTheLast)
{
    InventedSource source(inventedCaseload(db::mostCounted + 30));
    CaseloadModel model(source, english);
    for (db::CaseloadRow& row : source.held) {
        row.course->endDate = inventedToday() - std::chrono::days(1);
    }
    model.reload();
    EXPECT_EQ(model.endedInAll(), db::mostCounted + 30) << "without a word all are counted";
    model.setWish(searching(QStringLiteral(" - ")));
    EXPECT_FALSE(model.arrangement().endedIsMore) << "a sign is no word: all were counted";
    model.setWish(searching(QStringLiteral("e")));
    EXPECT_TRUE(model.arrangement().endedIsMore);
    EXPECT_EQ(model.index(0, 0).data().toString().remove(QChar::Nbsp),
              QStringLiteral("Ended, 1000 or more"));
    while (model.canFetchMore({})) {
        model.fetchMore({});
    }
    EXPECT_EQ(model.rowCount(), 1 + db::mostCounted + 30);
    EXPECT_EQ(model.index(0, 0).data().toString().remove(QChar::Nbsp),
              QStringLiteral("Ended, 1030"));
}

TEST_F(Caseload, OnlyRowsThatAreLookedAtAreReadWhole)
{
    source.held = inventedCaseload(2000);
    model.reload();
    source.rowsRead = 0;
    EXPECT_FALSE(cell(5, CaseloadColumn::name).isEmpty());
    EXPECT_LE(source.rowsRead, 26);
    const int once = source.rowsRead;
    EXPECT_FALSE(cell(6, CaseloadColumn::attention).isEmpty());
    EXPECT_EQ(source.rowsRead, once) << "its neighbours were read with it";
}

TEST_F(Caseload, SomebodyErasedElsewhereStaysANameUntilTheNextReading)
{
    source.held.clear();
    EXPECT_EQ(cell(1, CaseloadColumn::name), QStringLiteral("Édouard Quillan"));
    model.reload();
    EXPECT_EQ(model.rowCount(), 0);
}
