// SPDX-License-Identifier: GPL-3.0-or-later
// Taking over a diary that comes as a file: all of it or nothing, with its rows in the change
// record; and the columns that a practice remembers.
#include "tests/support/diary_records.h"
#include "tests/support/store_rows.h"

#include "db/course_events.h"
#include "db/diary.h"
#include "db/diary_mappings.h"
#include "db/diary_taking.h"
#include "db/practice_preferences.h"

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
    }
    DiaryOnFile onFile() const
    {
        return must(store->read([&](db::Reading& reading) {
            return db::diaryOnFile(reading, ids->course, day(2026, 3, 12));
        }));
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
    db::RememberedMappings remembered() const { return must(store->read(db::diaryMappings)); }
    Result<void> remember(const db::DiaryMapping& mapping, Version read)
    {
        return store->write(author(), "import diary", [&](db::Writing& writing) {
            db::saveDiaryMapping(writing, mapping, read);
        });
    }

    TempStore temp;
    std::unique_ptr<db::Store> store;
    std::optional<Practiced> ids;
};

} // namespace

TEST_F(DiaryTaking, KnowsTheKeysOfTheSitesOfThePlans)
{
    const DiaryOnFile known = onFile();
    ASSERT_EQ(known.siteKeys.size(), 1U);
    ASSERT_EQ(known.siteKeys.front().size(), 1U);
    ASSERT_EQ(known.siteKeys.front().front().size(), 1U);
    DiaryTakeOver taken;
    taken.newEntries = {entryOf(9)};
    taken.newEntries.front().amplitudes = {{.site = known.siteKeys.front().front().front(),
                                            .amplitude = Amplitude::fromCount(42'500)}};
    EXPECT_TRUE(take(taken)) << "the store takes it for a site of the course";
}

TEST_F(DiaryTaking, HoldsAFileAgainstTheCourseAsItIsStored)
{
    must(store->write(author(), "end course", [&](db::Writing& writing) {
        Course ended = db::course(writing, ids->course).value();
        ended.endDate = day(2026, 3, 8);
        db::changeCourse(writing, ended);
    }));
    EXPECT_EQ(onFile().records.course.endDate, day(2026, 3, 8));
    EXPECT_EQ(codeOf(store->read([](db::Reading& reading) {
                  return db::diaryOnFile(reading, CourseId(99), day(2026, 3, 12));
              })),
              ErrorCode::notFound);
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
    EXPECT_EQ(remembered(), db::RememberedMappings());
    must(remember(tracker, remembered().version));
    must(remember(other, remembered().version));
    EXPECT_EQ(remembered().mappings, (std::vector{other, tracker}));
    db::DiaryMapping changed = tracker;
    changed.columns.pop_back();
    must(remember(changed, remembered().version));
    EXPECT_EQ(remembered().mappings, (std::vector{other, changed}));
}

TEST_F(DiaryTaking, RemembersColumnsOnlyOverTheVersionThatWasRead)
{
    const db::DiaryMapping mine{.name = "Tracker",
                                .columns = {{"d", {.column = DiaryColumn::date}}}};
    const db::DiaryMapping theirs{.name = "Tracker",
                                  .columns = {{"Datum", {.column = DiaryColumn::date}}}};
    const Version read = remembered().version;
    must(remember(theirs, read));
    EXPECT_EQ(codeOf(remember(mine, read)), ErrorCode::changedElsewhere);
    EXPECT_EQ(remembered().mappings, std::vector{theirs});
    must(remember(mine, remembered().version));
    EXPECT_EQ(remembered().mappings, std::vector{mine});
}

TEST_F(DiaryTaking, PassesOverNothingOfRememberedColumnsThatItCannotRead)
{
    const auto with = [](const std::string& members) {
        return R"([{"name":"Tracker","columns":[{"heading":"d","holds":"date"}])" + members + "}]";
    };
    const auto setTo = [&](const std::string& text) {
        must(store->write(author(), "set preference", [&](db::Writing& writing) {
            const auto before = db::practicePreference(writing, "diary_import_mappings");
            db::setPracticePreference(writing, "diary_import_mappings", text,
                                      before ? before->version : 0);
        }));
    };
    setTo(with(R"(,"separator":null,"date_order":"dmy")"));
    EXPECT_EQ(remembered().mappings.size(), 1U);
    for (const std::string& text :
         {std::string("{}"), std::string("[3]"), std::string(R"([{"columns":[]}])"),
          std::string(R"([{"name":"","columns":[]}])"), std::string(R"([{"name":"Tracker"}])"),
          std::string(R"([{"name":"Tracker","columns":[3]}])"),
          std::string(R"([{"name":"Tracker","columns":[{"heading":"d","holds":"mood"}]}])"),
          std::string(R"([{"name":"Tracker","columns":[{"holds":"date"}]}])"),
          with(R"(,"separator":"ab")"), with(R"(,"separator":3)"), with(R"(,"date_order":"ydm")"),
          with(R"(,"duration_form":1)")}) {
        setTo(text);
        EXPECT_EQ(codeOf(store->read(db::diaryMappings)), ErrorCode::badFormat) << text;
        const auto version = must(store->read([](db::Reading& reading) {
                                 return db::practicePreference(reading, "diary_import_mappings");
                             })).value();
        EXPECT_EQ(codeOf(remember({.name = "App"}, version.version)), ErrorCode::badFormat) << text;
        EXPECT_EQ(must(store->read([](db::Reading& reading) {
                      return db::practicePreference(reading, "diary_import_mappings");
                  }))
                      .value()
                      .value,
                  text)
            << "it is not written over";
    }
}
