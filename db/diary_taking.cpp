// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/diary_taking.h"

#include "db/codec.h"
#include "db/course_events.h"
#include "db/course_records.h"
#include "db/diary.h"
#include "db/failure.h"

namespace quadrille::db
{

namespace
{

std::vector<PlanSiteKey> siteKeysOf(Reading& reading, CourseId course)
{
    std::vector<PlanSiteKey> keys;
    Statement rows(
        reading.connection(),
        "SELECT plan.number, block.ordinal - 1, site.ordinal - 1, site.id FROM site JOIN block ON "
        "block.id = site.block JOIN plan ON plan.id = block.plan WHERE plan.course = ? ORDER BY "
        "plan.number, block.ordinal, site.ordinal");
    rows.bind({valueOf(course)});
    while (rows.next()) {
        PlanSiteKey key;
        key.plan = takeInt(rows);
        key.block = static_cast<std::size_t>(rows.takeInteger());
        key.site = static_cast<std::size_t>(rows.takeInteger());
        key.key = rows.takeInteger();
        keys.push_back(key);
    }
    return keys;
}

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

DiaryOnFile diaryOnFile(Reading& reading, const Course& course, Date today)
{
    return {courseRecords(reading, course), siteKeysOf(reading, course.id.value()), today};
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
