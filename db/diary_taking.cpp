// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/diary_taking.h"

#include "db/course_events.h"
#include "db/course_records.h"
#include "db/courses.h"
#include "db/diary.h"
#include "db/failure.h"

namespace quadrille::db
{

namespace
{

/// Counts what is saved and stops where it is asked to.
class Progress
{
public:
    explicit Progress(const GoOn& goOn)
        : m_goOn(goOn)
    {
    }
    void step()
    {
        if (m_goOn && !m_goOn(++m_saved)) {
            throw Failure({.code = ErrorCode::refused, .subject = {}, .detail = "it was stopped"});
        }
    }

private:
    const GoOn& m_goOn;
    std::size_t m_saved = 0;
};

} // namespace

DiaryOnFile diaryOnFile(Reading& reading, CourseId id, Date today)
{
    const auto stored = course(reading, id);
    if (!stored) {
        throw Failure({.code = ErrorCode::notFound, .subject = "course", .detail = {}});
    }
    return {courseRecords(reading, *stored), siteKeysOf(reading, id), today};
}

void takeOverDiary(Writing& writing, const DiaryTakeOver& taken, const GoOn& goOn)
{
    Progress progress(goOn);
    for (const DiaryEntry& entry : taken.newEntries) {
        addDiaryEntry(writing, entry);
        progress.step();
    }
    for (const DiaryEntry& entry : taken.changedEntries) {
        correctDiaryEntry(writing, entry);
        progress.step();
    }
    for (const DiaryDay& day : taken.days) {
        saveDiaryDay(writing, day);
        progress.step();
    }
    if (taken.receipt) {
        addReceipt(writing, *taken.receipt);
        progress.step();
    }
}

} // namespace quadrille::db
