// SPDX-License-Identifier: GPL-3.0-or-later
// A copied diary is saved in one change, beside what somebody else saved.
#include "tests/support/diary_records.h"

#include "db/course_records.h"
#include "db/diary_saving.h"
#include "db/history.h"
#include "db/verification.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using namespace std::chrono_literals;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;
using tests::author;
using tests::day;
using tests::must;

class DiarySavingTest : public testing::Test
{
protected:
    Course course()
    {
        return must(store->read([&](Reading& reading) { return db::course(reading, ids.course); }))
            .value();
    }
    WrittenDiary stored()
    {
        const Course of = course();
        return must(store->read(
            [&](Reading& reading) { return writtenDiaryOf(courseRecords(reading, of)); }));
    }
    DiarySaving save(const WrittenDiary& base, const WrittenDiary& mine)
    {
        const Course of = course();
        return must(store->write(author(), "enter diary", [&](Writing& writing) {
            return saveDiary(writing, of, base, mine, day(2026, 3, 12));
        }));
    }
    std::int64_t firstSite()
    {
        return must(store->read([&](Reading& reading) { return siteKeysOf(reading, ids.course); }))
            .at(0)
            .at(0)
            .at(0);
    }
    static WrittenDay minutes(int time)
    {
        return {.sessions = {{1, {.time = Milliseconds(std::chrono::minutes(time))}}}};
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
    PlanId plan = tests::anIssuedPlan(*store, ids);
};

TEST_F(DiarySavingTest, SitesHaveTheirKeysPlanByPlanAndBlockByBlock)
{
    Draft draft = tests::aDraft(ids);
    Site second = draft.blocks.front().sites.front();
    second.muscle = "vastus medialis";
    second.channel = 2;
    draft.blocks.front().sites.push_back(second);
    draft.blocks.push_back(draft.blocks.front());
    must(store->write(author(), "issue plan", [&](Writing& writing) {
        return issuePlan(
            writing, draft,
            {.fromDate = day(2026, 3, 12), .reason = "next plan", .issuedBy = ids.practitioner},
            day(2026, 3, 12));
    }));
    const SiteKeys keys =
        must(store->read([&](Reading& reading) { return siteKeysOf(reading, ids.course); }));
    const auto raw = temp.rawConnection();
    const auto site = [&](std::int64_t number, std::int64_t block, std::int64_t ordinal) {
        return numberFrom(*raw,
                          "SELECT site.id FROM site JOIN block ON block.id = site.block JOIN plan "
                          "ON plan.id = block.plan WHERE plan.number = ? AND block.ordinal = ? AND "
                          "site.ordinal = ?",
                          {number, block, ordinal})
            .value();
    };
    EXPECT_EQ(keys, (SiteKeys{{{site(1, 1, 1)}},
                              {{site(2, 1, 1), site(2, 1, 2)}, {site(2, 2, 1), site(2, 2, 2)}}}));
}

TEST_F(DiarySavingTest, APlanWithoutBlocksKeepsItsPlaceAmongTheKeys)
{
    const auto raw = temp.rawConnection();
    run(*raw, "INSERT INTO plan (course, number, issued_on, issued_by, issued_by_name, from_date, "
              "reason, stimulator, limits_version, issued) SELECT course, 2, issued_on, "
              "issued_by, issued_by_name, issued_on, reason, stimulator, limits_version, 0 "
              "FROM plan");
    const SiteKeys keys =
        must(store->read([&](Reading& reading) { return siteKeysOf(reading, ids.course); }));
    ASSERT_THAT(keys, SizeIs(2));
    EXPECT_THAT(keys[0], SizeIs(1));
    EXPECT_THAT(keys[1], IsEmpty());
}

TEST_F(DiarySavingTest, EverythingThatWasCopiedComesBack)
{
    WrittenDiary mine;
    WrittenDay monday = minutes(20);
    monday.sessions[1].comfort = 0;
    monday.sessions[1].amplitudes[firstSite()] = Amplitude::fromCount(41'500);
    monday.sessions[2].time = Milliseconds(0);
    monday.skin = Skin::blisterOrBurn;
    monday.skinPad = "upper pad";
    monday.remark = "burnt";
    mine.put(day(2026, 2, 9), monday);
    mine.receivedThrough = day(2026, 2, 15);
    const DiarySaving saving = save({}, mine);
    EXPECT_TRUE(saving.isSaved());
    EXPECT_EQ(saving.saved, mine);
    EXPECT_EQ(stored(), mine);
    EXPECT_THAT(must(store->read(verify)), IsEmpty());
}

TEST_F(DiarySavingTest, AClashSavesNothing)
{
    WrittenDiary theirs;
    theirs.put(day(2026, 2, 9), minutes(15));
    save({}, theirs);
    WrittenDiary mine;
    mine.put(day(2026, 2, 9), minutes(20));
    mine.put(day(2026, 2, 10), minutes(20));
    const DiarySaving saving = save({}, mine);
    EXPECT_THAT(saving.clashes, ElementsAre(DiaryClash{DiaryPart::session, day(2026, 2, 9), 1}));
    EXPECT_EQ(stored(), theirs);
    EXPECT_EQ(saving.theirs, theirs);
}

TEST_F(DiarySavingTest, AnEmptiedSessionIsWithdrawnAndTakenUpAgain)
{
    WrittenDiary written;
    written.put(day(2026, 2, 9), minutes(20));
    save({}, written);
    save(written, {});
    EXPECT_EQ(stored(), WrittenDiary());
    WrittenDiary again;
    again.put(day(2026, 2, 9), minutes(18));
    save({}, again);
    EXPECT_EQ(stored(), again);
    const auto entries = must(store->read([&](Reading& reading) {
        return diaryEntriesOf(reading, ids.course, day(2026, 2, 1), day(2026, 2, 28));
    }));
    ASSERT_THAT(entries, SizeIs(1));
    EXPECT_EQ(entries.front().version, 3);
}

TEST_F(DiarySavingTest, WhatSomebodyElseSavedStays)
{
    WrittenDiary base;
    base.put(day(2026, 2, 9), minutes(20));
    save({}, base);
    tests::must(store->write(author(), "enter diary", [&](Writing& writing) {
        DiaryEntry entry;
        entry.course = ids.course;
        entry.day = day(2026, 2, 11);
        entry.duration = 20min;
        entry.contractions = 75;
        entry.source = DiarySource::file;
        addDiaryEntry(writing, entry);
    }));
    WrittenDiary mine = base;
    mine.put(day(2026, 2, 10), minutes(20));
    EXPECT_TRUE(save(base, mine).isSaved());
    EXPECT_THAT(stored().days, SizeIs(3));
}

} // namespace
} // namespace quadrille::db
