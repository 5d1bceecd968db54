// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/diary_saving.h"

#include "db/course_events.h"
#include "db/course_records.h"
#include "db/diary.h"

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
