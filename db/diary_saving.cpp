// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/diary_saving.h"

#include "db/codec.h"
#include "db/course_events.h"
#include "db/course_records.h"
#include "db/diary.h"
#include "db/sql.h"

#include <utility>

namespace quadrille::db
{

namespace
{

void write(Writing& writing, const DiaryChanges& changes)
{
    for (const DiaryEntry& entry : changes.corrected) {
        correctDiaryEntry(writing, entry);
    }
    for (const DiaryEntry& entry : changes.added) {
        addDiaryEntry(writing, entry);
    }
    for (const DiaryDay& day : changes.days) {
        saveDiaryDay(writing, day);
    }
    for (const DiaryReceived& receipt : changes.receiptsWithdrawn) {
        changeReceipt(writing, receipt);
    }
    if (changes.receiptAdded) {
        addReceipt(writing, *changes.receiptAdded);
    }
}

} // namespace

SiteKeys siteKeysOf(Reading& reading, CourseId course)
{
    SiteKeys keys;
    std::int64_t planBefore = 0;
    std::int64_t blockBefore = 0;
    Statement rows(reading.connection(),
                   "SELECT plan.id, block.id, site.id FROM plan "
                   "JOIN block ON block.plan = plan.id LEFT JOIN site ON site.block = block.id "
                   "WHERE plan.course = ? ORDER BY plan.number, block.ordinal, site.ordinal");
    rows.bind({valueOf(course)});
    while (rows.next()) {
        const std::int64_t plan = rows.takeInteger();
        const std::int64_t block = rows.takeInteger();
        const auto site = rows.takeOptionalInteger();
        if (plan != planBefore) {
            keys.emplace_back();
        }
        if (plan != planBefore || block != blockBefore) {
            keys.back().emplace_back();
        }
        if (site) {
            keys.back().back().push_back(*site);
        }
        planBefore = plan;
        blockBefore = block;
    }
    return keys;
}

DiarySaving saveDiary(Writing& writing, const Course& course, const WrittenDiary& base,
                      const WrittenDiary& mine, Date today)
{
    const CourseRecords records = courseRecords(writing, course);
    DiarySaving saving;
    saving.theirs = writtenDiaryOf(records);
    MergedDiary merged = mergeDiaries(base, mine, saving.theirs);
    saving.clashes = std::move(merged.clashes);
    if (saving.isSaved()) {
        write(writing, diaryChanges(records, merged.diary, today));
        saving.saved = writtenDiaryOf(courseRecords(writing, course));
    } else {
        saving.saved = saving.theirs;
    }
    return saving;
}

} // namespace quadrille::db
