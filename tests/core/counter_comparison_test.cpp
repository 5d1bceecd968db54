// SPDX-License-Identifier: GPL-3.0-or-later
// What a unit counted against what the diary says.
#include "tests/core/copied_diary.h"

#include "core/counter_comparison.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::test
{
namespace
{

using namespace std::chrono_literals;
using testing::IsEmpty;
using testing::SizeIs;

CounterReading readingOn(unsigned day, std::optional<int> uses, std::optional<int> minutes,
                         std::int64_t key)
{
    CounterReading reading;
    reading.id = CounterReadingId(key);
    reading.readOn = marchDay(day);
    reading.totalUses = uses;
    if (minutes) {
        reading.totalTime = Milliseconds(std::chrono::minutes(*minutes));
    }
    return reading;
}

/// A diary of so many sessions of 20 min, the first on 2 March, and received through the 15th.
CourseRecords diaryOf(int sessions)
{
    CourseRecords records = copiedRecords(copiedPlan());
    for (int i = 0; i < sessions; ++i) {
        DiaryEntry entry;
        entry.day = marchDay(2) + std::chrono::days(i % 14);
        entry.sessionNumber = i / 14 + 1;
        entry.duration = 20min;
        records.entries.push_back(entry);
    }
    DiaryReceived receipt;
    receipt.throughDate = marchDay(15);
    records.receipts = {receipt};
    return records;
}

TEST(CounterComparison, NeedsTwoReadings)
{
    EXPECT_THAT(compareCounter(diaryOf(10), {}), IsEmpty());
    EXPECT_THAT(compareCounter(diaryOf(10), {readingOn(2, 3, 60, 1)}), IsEmpty());
}

TEST(CounterComparison, HoldsWhatWasCountedBetweenTwoReadingsAgainstTheDiary)
{
    // 10 uses and 200 min on the unit, 10 sessions of 20 min in the diary.
    const auto compared =
        compareCounter(diaryOf(10), {readingOn(16, 13, 260, 2), readingOn(2, 3, 60, 1)});
    ASSERT_THAT(compared, SizeIs(1));
    EXPECT_EQ(compared[0].reading, CounterReadingId(2));
    EXPECT_EQ(compared[0].from, marchDay(2));
    EXPECT_EQ(compared[0].to, marchDay(15));
    EXPECT_EQ(compared[0].uses, (CountedAndEntered{10, 10}));
    EXPECT_EQ(compared[0].time->counted, Milliseconds(200min).count());
    EXPECT_EQ(compared[0].time->entered, Milliseconds(200min).count());
    EXPECT_TRUE(compared[0].diaryIsKnown);
    EXPECT_FALSE(compared[0].differs());
}

TEST(CounterComparison, ShowsADifferenceOverTenPercentAndNotOneOfTen)
{
    // Ten per cent of 20 is 2, by hand.
    const std::vector<CounterReading> twenty{readingOn(2, 0, std::nullopt, 1),
                                             readingOn(16, 20, std::nullopt, 2)};
    EXPECT_FALSE(compareCounter(diaryOf(22), twenty)[0].differs());
    EXPECT_FALSE(compareCounter(diaryOf(18), twenty)[0].differs());
    EXPECT_TRUE(compareCounter(diaryOf(23), twenty)[0].differs());
    EXPECT_TRUE(compareCounter(diaryOf(17), twenty)[0].differs());
    EXPECT_EQ(compareCounter(diaryOf(22), twenty)[0].time, std::nullopt);
}

TEST(CounterComparison, SeesWhatWasFoundWithAHiddenSensor)
{
    // Nicolson 2018, J Orthop Sports Phys Ther 48:943: median 220 exercises in the diary, 176 by
    // accelerometer, 25 % more.
    const CountedAndEntered both{.counted = 176, .entered = 220};
    EXPECT_DOUBLE_EQ(both.differencePercent().value(), 25.0);
    EXPECT_TRUE(both.differs());
}

TEST(CounterComparison, SaysNothingWhileTheDiaryIsNotBack)
{
    CourseRecords records = diaryOf(5);
    records.receipts.front().throughDate = marchDay(14);
    const auto compared =
        compareCounter(records, {readingOn(2, 0, 0, 1), readingOn(16, 10, 200, 2)});
    EXPECT_FALSE(compared[0].diaryIsKnown);
    EXPECT_FALSE(compared[0].differs());
}

TEST(CounterComparison, ACounterThatShowsLessThanBeforeIsToBeExplained)
{
    CounterReading second = readingOn(16, 4, 80, 2);
    auto compared = compareCounter(diaryOf(10), {readingOn(2, 30, 600, 1), second});
    EXPECT_TRUE(compared[0].countsBackwards);
    EXPECT_TRUE(compared[0].differs());
    EXPECT_FALSE(compared[0].isExplained);
    second.explanation = CounterExplanation::counterReset;
    compared = compareCounter(diaryOf(10), {readingOn(2, 30, 600, 1), second});
    EXPECT_TRUE(compared[0].isExplained);
}

TEST(CounterComparison, CountsNeitherWithdrawnReadingsNorEntriesThatCameFromACounter)
{
    CourseRecords records = diaryOf(10);
    records.entries[0].withdrawn = true;
    records.entries[1].source = DiarySource::counter;
    records.entries[2].duration = 0min;
    CounterReading mistaken = readingOn(9, 500, 600, 3);
    mistaken.withdrawn = true;
    const auto compared = compareCounter(
        records, {readingOn(2, 0, std::nullopt, 1), mistaken, readingOn(16, 7, std::nullopt, 2)});
    ASSERT_THAT(compared, SizeIs(1));
    EXPECT_EQ(compared[0].uses, (CountedAndEntered{7, 7}));
}

TEST(CounterComparison, NoughtCountedAndSomethingReportedDiffersWithoutAShare)
{
    const CountedAndEntered both{.counted = 0, .entered = 1};
    EXPECT_TRUE(both.differs());
    EXPECT_EQ(both.differencePercent(), std::nullopt);
    EXPECT_FALSE((CountedAndEntered{0, 0}).differs());
}

} // namespace
} // namespace quadrille::test
