// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/course_records.h"

#include "db/course_events.h"
#include "db/diary.h"
#include "db/plans.h"
#include "db/practice_preferences.h"

#include <algorithm>
#include <chrono>
#include <string>

namespace quadrille::db
{

namespace
{

constexpr Date firstDay = Date(std::chrono::year(1) / 1 / 1);
constexpr Date lastDay = Date(std::chrono::year(9999) / 12 / 31);

/// The miniature grid shows four weeks, the last of them begun.
constexpr std::chrono::days recent{7 * 5};

int percentFrom(Reading& reading, const std::string& name, int usual)
{
    return wholeNumberPreference(reading, name, 1, 100).value_or(usual);
}

} // namespace

CourseRecords courseRecords(Reading& reading, const Course& course)
{
    const CourseId id = course.id.value();
    CourseRecords records{.course = course};
    records.plans = plansOf(reading, id);
    records.pauses = pausesOf(reading, id);
    records.entries = diaryEntriesOf(reading, id, firstDay, lastDay);
    records.days = diaryDaysOf(reading, id, firstDay, lastDay);
    records.receipts = receiptsOf(reading, id);
    records.followUps = followUpsOf(reading, id);
    return records;
}

void addRecentDiary(Reading& reading, std::vector<CaseloadRow>& rows, Date today)
{
    for (CaseloadRow& row : rows) {
        if (!row.course || !row.course->id) {
            continue;
        }
        const CourseId course = *row.course->id;
        const Date to = std::min(row.course->endDate.value_or(today), today);
        const Date from = to - recent;
        row.pauses = pausesOf(reading, course);
        row.receipts = receiptsOf(reading, course);
        row.entries = diaryEntriesOf(reading, course, from, to);
        row.days = diaryDaysOf(reading, course, from, to);
    }
}

AdherenceRules adherenceRules(Reading& reading)
{
    const AdherenceRules usual;
    return {percentFrom(reading, "session_done_percent", usual.sessionDonePercent),
            percentFrom(reading, "week_adherence_percent", usual.weekPercent)};
}

} // namespace quadrille::db
