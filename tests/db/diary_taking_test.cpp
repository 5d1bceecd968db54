// SPDX-License-Identifier: GPL-3.0-or-later
// Taking over a diary that comes as a file: all of it or nothing, with its rows in the change
// record; and the columns that a practice remembers.
#include "tests/support/diary_records.h"
#include "tests/support/store_rows.h"

#include "db/course_events.h"
#include "db/diary.h"
#include "db/diary_mappings.h"
#include "db/diary_taking.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::tests;

namespace
{

class DiaryTaking : public testing::Test
{
protected:
    DiaryTaking()
    {
        store = temp.open();
        ids.emplace(aPracticeWithCourse(*store));
        anIssuedPlan(*store, *ids);
        aDiaryOfFourWeeks(*store, *ids);
        course = must(store->read([&](db::Reading& reading) {
                     return db::course(reading, ids->course);
                 })).value();
    }
    DiaryEntry entryOf(unsigned date) const
    {
        DiaryEntry entry;
        entry.course = ids->course;
        entry.day = day(2026, 3, date);
        entry.duration = std::chrono::minutes(20);
        entry.source = DiarySource::file;
        return entry;
    }
    Result<void> take(const DiaryTakeOver& taken, const db::GoOn& goOn = {})
    {
        return store->write(author(), "import diary",
                            [&](db::Writing& writing) { db::takeOverDiary(writing, taken, goOn); });
    }

    TempStore temp;
    std::unique_ptr<db::Store> store;
    std::optional<Practiced> ids;
    Course course;
};

} // namespace

TEST_F(DiaryTaking, KnowsTheKeysOfTheSitesOfThePlans)
{
    const DiaryOnFile onFile = must(store->read(
        [&](db::Reading& reading) { return db::diaryOnFile(reading, course, day(2026, 3, 12)); }));
    ASSERT_EQ(onFile.siteKeys.size(), 1U);
    EXPECT_EQ(onFile.siteKeys.front().plan, 1);
    EXPECT_EQ(onFile.siteKeys.front().block, 0U);
    EXPECT_EQ(onFile.siteKeys.front().site, 0U);
    DiaryTakeOver taken;
    taken.newEntries = {entryOf(9)};
    taken.newEntries.front().amplitudes = {
        {.site = onFile.siteKeys.front().key, .amplitude = Amplitude::fromCount(42'500)}};
    EXPECT_TRUE(take(taken)) << "the store takes it for a site of the course";
}

TEST_F(DiaryTaking, LeavesNothingBehindWhenItFailsMidway)
{
    const std::string before = everyRow(temp.file());
    DiaryTakeOver taken;
    taken.newEntries = {entryOf(9), entryOf(10), entryOf(9)};
    EXPECT_EQ(codeOf(take(taken)), ErrorCode::notUnique);
    EXPECT_EQ(everyRow(temp.file()), before);
}

TEST_F(DiaryTaking, LeavesNothingBehindWhenItIsStopped)
{
    const std::string before = everyRow(temp.file());
    DiaryTakeOver taken;
    taken.newEntries = {entryOf(9), entryOf(10), entryOf(11)};
    EXPECT_EQ(codeOf(take(taken, [](std::size_t saved) { return saved < 2; })), ErrorCode::refused);
    EXPECT_EQ(everyRow(temp.file()), before);
}

TEST_F(DiaryTaking, SavesOnlyOverTheVersionThatWasRead)
{
    DiaryEntry stored =
        must(store->read([&](db::Reading& reading) {
            return db::diaryEntriesOf(reading, ids->course, day(2026, 2, 9), day(2026, 2, 9));
        })).front();
    must(store->write(author(), "correct diary", [&](db::Writing& writing) {
        DiaryEntry other = stored;
        other.comfort = 3;
        db::correctDiaryEntry(writing, other);
    }));
    stored.comfort = 8;
    DiaryTakeOver taken;
    taken.newEntries = {entryOf(9)};
    taken.changedEntries = {stored};
    const std::string before = everyRow(temp.file());
    EXPECT_EQ(codeOf(take(taken)), ErrorCode::changedElsewhere);
    EXPECT_EQ(everyRow(temp.file()), before);
}

TEST_F(DiaryTaking, WritesARowOfTheChangeRecordForEachEntry)
{
    const auto rows = [&] {
        return must(store->read([](db::Reading& reading) {
            return db::numberFrom(reading.connection(), "SELECT count(*) FROM change_record");
        }));
    };
    const auto before = rows();
    DiaryTakeOver taken;
    taken.newEntries = {entryOf(9), entryOf(10)};
    must(take(taken));
    EXPECT_EQ(*rows(), *before + 2);
}

TEST_F(DiaryTaking, RemembersColumnsByName)
{
    const db::DiaryMapping tracker{
        .name = "Tracker",
        .separator = ';',
        .dateOrder = DateOrder::dayMonthYear,
        .durationForm = DurationForm::minutesSeconds,
        .columns = {{"Datum", {.column = DiaryColumn::date}},
                    {"mA \"L\"", {.column = DiaryColumn::amplitude, .channel = 2}}}};
    const db::DiaryMapping other{.name = "App", .columns = {{"d", {.column = DiaryColumn::date}}}};
    const auto save = [&](const db::DiaryMapping& mapping) {
        must(store->write(author(), "import diary",
                          [&](db::Writing& writing) { db::saveDiaryMapping(writing, mapping); }));
    };
    const auto stored = [&] { return must(store->read(db::diaryMappings)); };
    EXPECT_TRUE(stored().empty());
    save(tracker);
    save(other);
    EXPECT_EQ(stored(), (std::vector{other, tracker}));
    db::DiaryMapping changed = tracker;
    changed.columns.pop_back();
    save(changed);
    EXPECT_EQ(stored(), (std::vector{other, changed}));
}
