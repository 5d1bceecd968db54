// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/course_records.h"

#include "db/codec.h"
#include "db/course_events.h"
#include "db/diary.h"
#include "db/plans.h"
#include "db/practice_preferences.h"
#include "db/sql.h"

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

SiteKeys siteKeysOf(Reading& reading, CourseId course)
{
    SiteKeys keys;
    std::int64_t planBefore = 0;
    std::int64_t blockBefore = 0;
    Statement rows(reading.connection(),
                   "SELECT plan.id, block.id, site.id FROM plan "
                   "LEFT JOIN block ON block.plan = plan.id "
                   "LEFT JOIN site ON site.block = block.id "
                   "WHERE plan.course = ? ORDER BY plan.number, block.ordinal, site.ordinal");
    rows.bind({valueOf(course)});
    while (rows.next()) {
        const std::int64_t plan = rows.takeInteger();
        const auto block = rows.takeOptionalInteger();
        const auto site = rows.takeOptionalInteger();
        if (plan != planBefore) { // one without blocks keeps its place too
            keys.emplace_back();
        }
        if (block && *block != blockBefore) {
            keys.back().emplace_back();
        }
        if (site) {
            keys.back().back().push_back(*site);
        }
        planBefore = plan;
        blockBefore = block.value_or(0);
    }
    return keys;
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
