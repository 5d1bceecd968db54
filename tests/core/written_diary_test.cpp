// SPDX-License-Identifier: GPL-3.0-or-later
// A diary as it is written down: what saving changes, and how two people's work goes together.
#include "tests/core/copied_diary.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::test
{
namespace
{

using namespace std::chrono_literals;
using testing::ElementsAre;
using testing::IsEmpty;

WrittenDay minutes(int time)
{
    return {.sessions = {{1, {.time = Milliseconds(std::chrono::minutes(time))}}}};
}

DiaryEntry entryOn(unsigned day, int time, std::int64_t key)
{
    DiaryEntry entry;
    entry.id = DiaryEntryId(key);
    entry.course = CourseId(1);
    entry.day = marchDay(day);
    entry.duration = std::chrono::minutes(time);
    return entry;
}

TEST(WrittenDiary, SavesNothingWhereNothingChanged)
{
    CourseRecords records = copiedRecords(copiedPlan());
    records.entries = {entryOn(2, 20, 1)};
    records.entries.front().contractions = 75;
    records.entries.front().source = DiarySource::file;
    EXPECT_TRUE(diaryChanges(records, writtenDiaryOf(records), marchDay(9)).isEmpty());
}

TEST(WrittenDiary, AddsCorrectsAndWithdraws)
{
    CourseRecords records = copiedRecords(copiedPlan());
    records.entries = {entryOn(2, 20, 1), entryOn(3, 20, 2)};
    records.entries.front().source = DiarySource::file;
    WrittenDiary diary = writtenDiaryOf(records);
    diary.put(marchDay(2), minutes(12));
    diary.put(marchDay(3), {});
    diary.put(marchDay(4), minutes(20));
    const DiaryChanges changes = diaryChanges(records, diary, marchDay(9));
    ASSERT_EQ(changes.corrected.size(), 2U);
    EXPECT_EQ(changes.corrected[0].duration, Milliseconds(12min));
    EXPECT_EQ(changes.corrected[0].source, DiarySource::file) << "it came so";
    EXPECT_EQ(changes.corrected[0].id, DiaryEntryId(1));
    EXPECT_TRUE(changes.corrected[1].withdrawn);
    ASSERT_EQ(changes.added.size(), 1U);
    EXPECT_EQ(changes.added[0].day, marchDay(4));
    EXPECT_EQ(changes.added[0].source, DiarySource::paper);
    EXPECT_EQ(changes.added[0].course, CourseId(1));
}

TEST(WrittenDiary, TakesUpAWithdrawnEntryInItsPlace)
{
    CourseRecords records = copiedRecords(copiedPlan());
    records.entries = {entryOn(2, 20, 1)};
    records.entries.front().withdrawn = true;
    records.entries.front().contractions = 75;
    WrittenDiary diary = writtenDiaryOf(records);
    EXPECT_THAT(diary.days, IsEmpty());
    diary.put(marchDay(2), minutes(20));
    const DiaryChanges changes = diaryChanges(records, diary, marchDay(9));
    ASSERT_EQ(changes.corrected.size(), 1U);
    EXPECT_FALSE(changes.corrected[0].withdrawn);
    EXPECT_EQ(changes.corrected[0].contractions, std::nullopt) << "those were of the other entry";
}

TEST(WrittenDiary, AThroughDateThatMovesBackWithdrawsTheReceiptsBeyondIt)
{
    CourseRecords records = copiedRecords(copiedPlan());
    for (const auto& [through, key] : {std::pair(8U, 1), std::pair(15U, 2)}) {
        DiaryReceived receipt;
        receipt.id = DiaryReceivedId(key);
        receipt.throughDate = marchDay(through);
        records.receipts.push_back(receipt);
    }
    WrittenDiary diary = writtenDiaryOf(records);
    EXPECT_EQ(diary.receivedThrough, marchDay(15));
    diary.receivedThrough = marchDay(8);
    DiaryChanges changes = diaryChanges(records, diary, marchDay(16));
    ASSERT_EQ(changes.receiptsWithdrawn.size(), 1U);
    EXPECT_EQ(changes.receiptsWithdrawn[0].id, DiaryReceivedId(2));
    EXPECT_FALSE(changes.receiptAdded) << "the first stands";
    diary.receivedThrough = marchDay(22);
    changes = diaryChanges(records, diary, marchDay(23));
    EXPECT_THAT(changes.receiptsWithdrawn, IsEmpty());
    ASSERT_TRUE(changes.receiptAdded);
    EXPECT_EQ(changes.receiptAdded->receivedOn, marchDay(23));
    diary.receivedThrough.reset();
    EXPECT_EQ(diaryChanges(records, diary, marchDay(16)).receiptsWithdrawn.size(), 2U);
}

TEST(WrittenDiary, ShowsInTheFiguresBeforeItIsSaved)
{
    // Mon done, Tue cut short, Wed nothing, received through Wed: 1 of 3 sessions, by hand.
    const CourseRecords records = copiedRecords(copiedPlan());
    WrittenDiary diary;
    diary.put(marchDay(2), minutes(20));
    diary.put(marchDay(3), minutes(10));
    diary.receivedThrough = marchDay(4);
    const CourseAsLived lived = courseAsLived(withDiary(records, diary), {}, marchDay(6));
    EXPECT_EQ(lived.find(marchDay(2))->standing, DayStanding::done);
    EXPECT_EQ(lived.find(marchDay(3))->standing, DayStanding::partly);
    EXPECT_EQ(lived.find(marchDay(4))->standing, DayStanding::missed);
    EXPECT_EQ(lived.find(marchDay(5))->standing, DayStanding::notKnownYet);
}

TEST(WrittenDiary, ChangesOfTwoPeopleGoTogetherWhereTheyDoNotMeet)
{
    WrittenDiary base;
    base.put(marchDay(2), minutes(20));
    base.put(marchDay(3), minutes(20));
    WrittenDiary mine = base;
    mine.put(marchDay(4), minutes(20));
    WrittenDay remarked = minutes(20);
    remarked.remark = "tired";
    mine.put(marchDay(2), remarked);
    WrittenDiary theirs = base;
    theirs.put(marchDay(2), minutes(15));
    theirs.put(marchDay(3), {});
    theirs.receivedThrough = marchDay(8);
    const MergedDiary merged = mergeDiaries(base, mine, theirs);
    EXPECT_THAT(merged.clashes, IsEmpty());
    EXPECT_EQ(merged.diary.on(marchDay(2)).sessions.at(1).time, Milliseconds(15min));
    EXPECT_EQ(merged.diary.on(marchDay(2)).remark, "tired");
    EXPECT_TRUE(merged.diary.on(marchDay(3)).isEmpty());
    EXPECT_EQ(merged.diary.on(marchDay(4)), minutes(20));
    EXPECT_EQ(merged.diary.receivedThrough, marchDay(8));
}

TEST(WrittenDiary, ChangesOfOnePartClashAndMineIsShownUntilSomebodyChooses)
{
    WrittenDiary base;
    base.put(marchDay(2), minutes(20));
    WrittenDiary mine = base;
    mine.put(marchDay(2), minutes(10));
    WrittenDiary theirs = base;
    theirs.put(marchDay(2), minutes(15));
    MergedDiary merged = mergeDiaries(base, mine, theirs);
    ASSERT_THAT(merged.clashes, ElementsAre(DiaryClash{DiaryPart::session, marchDay(2), 1}));
    EXPECT_EQ(merged.diary.on(marchDay(2)), minutes(10));
    takePart(merged.diary, merged.clashes.front(), theirs);
    EXPECT_EQ(merged.diary.on(marchDay(2)), minutes(15));
    EXPECT_THAT(mergeDiaries(base, theirs, theirs).clashes, IsEmpty()) << "both wrote the same";
}

} // namespace
} // namespace quadrille::test
