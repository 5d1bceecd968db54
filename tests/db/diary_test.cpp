// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/diary.h"
#include "db/history.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using namespace literals;
using namespace std::chrono_literals;
using testing::ElementsAre;
using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

class Diary : public testing::Test
{
protected:
    DiaryEntry anEntry(unsigned dayOfFebruary = 9, int session = 1) const
    {
        DiaryEntry entry;
        entry.course = ids.course;
        entry.day = day(2026, 2, dayOfFebruary);
        entry.sessionNumber = session;
        entry.duration = 20min;
        return entry;
    }
    auto add(const DiaryEntry& entry)
    {
        return store->write(author(), "enter diary",
                            [&](Writing& writing) { return addDiaryEntry(writing, entry); });
    }
    auto correct(const DiaryEntry& entry)
    {
        return store->write(author(), "correct diary",
                            [&](Writing& writing) { correctDiaryEntry(writing, entry); });
    }
    std::vector<DiaryEntry> all()
    {
        return must(store->read([&](Reading& reading) {
            return diaryEntriesOf(reading, ids.course, day(2026, 2, 1), day(2026, 2, 28));
        }));
    }
    std::int64_t aSite()
    {
        return must(store->read([](Reading& reading) {
            return *numberFrom(reading.connection(),
                               "SELECT site.id FROM site JOIN block ON block.id = site.block "
                               "WHERE block.plan IS NOT NULL");
        }));
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
    PlanId plan = tests::anIssuedPlan(*store, ids);
};

TEST_F(Diary, AnEntryComesBackAsReportedAndWhatWasNotReportedStaysUnknown)
{
    DiaryEntry sparse = anEntry(9);
    DiaryEntry full = anEntry(10, 2);
    full.contractions = 75;
    full.comfort = 0;
    full.amplitudes = {{aSite(), 45500_uA}};
    full.source = DiarySource::clinic;
    for (DiaryEntry* entry : {&sparse, &full}) {
        entry->id = must(add(*entry));
        entry->enteredByName = "Set-up";
        entry->enteredAt = temp.clock.now();
    }
    EXPECT_THAT(all(), ElementsAre(sparse, full));
    EXPECT_EQ(all().at(0).comfort, std::nullopt);
}

TEST_F(Diary, ASessionHasOneEntry)
{
    must(add(anEntry()));
    const auto again = add(anEntry());
    ASSERT_EQ(codeOf(again), ErrorCode::notUnique);
    EXPECT_EQ(again.error().subject, "2026-02-09, 1");
    must(add(anEntry(9, 2)));
    const auto raw = temp.rawConnection();
    EXPECT_THROW(run(*raw, "INSERT INTO diary_entry SELECT NULL, course, day, session_number, "
                           "duration_ms, contractions, comfort, source, entered_by, "
                           "entered_by_name, entered_at, withdrawn, version FROM diary_entry"),
                 SqlError);
}

TEST_F(Diary, ACorrectionKeepsTheOldValue)
{
    DiaryEntry entry = anEntry();
    entry.amplitudes = {{aSite(), 45_mA}};
    entry.id = must(add(entry));
    DiaryEntry stale = entry;
    entry.duration = 15min;
    entry.comfort = 6;
    entry.amplitudes = {{aSite(), 50_mA}};
    must(correct(entry));
    const auto changes = must(store->read([&](Reading& reading) {
        return historyOfRecord(reading, "diary_entry", entry.id->key());
    }));
    ASSERT_THAT(changes, testing::SizeIs(4));
    EXPECT_EQ(changes[0].act, ChangeAct::created);
    EXPECT_EQ(changes[1].field, "duration_ms");
    EXPECT_EQ(changes[1].from, "1200000");
    EXPECT_EQ(changes[1].to, "900000");
    EXPECT_EQ(changes[2].field, "comfort");
    EXPECT_EQ(changes[2].from, std::nullopt);
    EXPECT_EQ(changes[3].field, "amplitudes." + std::to_string(aSite()));
    EXPECT_EQ(changes[3].from, "45000");
    stale.duration = 10min;
    EXPECT_EQ(codeOf(correct(stale)), ErrorCode::changedElsewhere);
    EXPECT_EQ(all().at(0).duration, 15min);
    EXPECT_EQ(all().at(0).version, 2);
}

TEST_F(Diary, ACorrectionNeverLandsOnAnotherSession)
{
    must(add(anEntry(9)));
    DiaryEntry second = anEntry(10);
    second.id = must(add(second));
    second.day = day(2026, 2, 9);
    EXPECT_EQ(codeOf(correct(second)), ErrorCode::notUnique);
}

TEST_F(Diary, WhatIsBeyondAllMeasureIsRefused)
{
    DiaryEntry wrong = anEntry();
    wrong.comfort = 11;
    EXPECT_EQ(codeOf(add(wrong)), ErrorCode::outOfRange);
    wrong = anEntry();
    wrong.duration = 25h;
    EXPECT_EQ(codeOf(add(wrong)), ErrorCode::outOfRange);
    wrong = anEntry(9, 0);
    EXPECT_EQ(codeOf(add(wrong)), ErrorCode::outOfRange);
    wrong = anEntry();
    wrong.amplitudes = {{9999, 40_mA}}; // a site of no plan of this course
    EXPECT_EQ(codeOf(add(wrong)), ErrorCode::refused);
    EXPECT_THAT(all(), testing::IsEmpty());
}

TEST_F(Diary, SkinAndRemarkBelongToTheDay)
{
    DiaryDay monday;
    monday.course = ids.course;
    monday.day = day(2026, 2, 9);
    monday.skin = Skin::thereNextDay;
    monday.skinPad = "upper pad";
    monday.remark = "Red until Tuesday.";
    const auto save = [&] {
        return store->write(author(), "enter diary",
                            [&](Writing& writing) { return saveDiaryDay(writing, monday); });
    };
    monday.id = must(save());
    const auto days = [&] {
        return must(store->read([&](Reading& reading) {
            return diaryDaysOf(reading, ids.course, day(2026, 2, 9), day(2026, 2, 9));
        }));
    };
    EXPECT_THAT(days(), ElementsAre(monday));
    monday.skin = Skin::nothing;
    monday.skinPad.clear();
    must(save());
    monday.version = 2;
    EXPECT_THAT(days(), ElementsAre(monday));
    monday.skinPad = "a pad, yet nothing on the skin";
    EXPECT_EQ(codeOf(save()), ErrorCode::outOfRange);
}

} // namespace
} // namespace quadrille::db
