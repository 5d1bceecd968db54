// SPDX-License-Identifier: GPL-3.0-or-later
// A course whose diary is copied: four weeks from Monday 2 March 2026, Monday to Friday, 20 min.
// The site has the key 11, a second one 12. Invented.
#pragma once

#include "tests/core/examples.h"

#include "core/diary_remarks.h"

#include <string_view>

namespace quadrille::test
{

constexpr Date marchDay(unsigned day)
{
    return Date(std::chrono::year_month_day(std::chrono::year(2026), std::chrono::month(3),
                                            std::chrono::day(day)));
}

inline Plan copiedPlan(int sessionsPerDay = 1, int sites = 1)
{
    Block block = someBlock();
    block.sessionsPerDay = sessionsPerDay;
    if (sites == 2) {
        block.sites.push_back(someSite(2));
    }
    for (Site& site : block.sites) {
        site.settings.amplitude.ceiling = Amplitude::fromCount(60'000);
    }
    Plan plan;
    plan.fromDate = marchDay(2);
    plan.stimulator = someStimulator();
    plan.stimulator.sessionLength.most = std::chrono::minutes(60);
    plan.stimulator.amplitude.most = Amplitude::fromCount(100'000);
    plan.blocks = {block};
    return plan;
}

inline CourseRecords copiedRecords(const Plan& plan)
{
    CourseRecords records;
    records.course.id = CourseId(1);
    records.course.startDate = marchDay(2);
    records.plans = {plan};
    return records;
}

inline DiarySheet emptySheet(const Plan& plan, Date today = marchDay(29))
{
    std::vector<std::int64_t> keys;
    for (std::size_t i = 0; i < plan.blocks.front().sites.size(); ++i) {
        keys.push_back(11 + static_cast<std::int64_t>(i));
    }
    const CourseRecords records = copiedRecords(plan);
    return {diaryFormOf(records, {{keys}}, today), writtenDiaryOf(records)};
}

/// Types signs one after the other.
inline void typeSigns(DiarySheet& sheet, std::string_view signs)
{
    for (const char sign : signs) {
        sheet.type(sign);
    }
}

/// Minutes of a session; −1 where none are written.
inline int minutesOn(const DiarySheet& sheet, Date day, int session = 1)
{
    const auto& sessions = sheet.diary().on(day).sessions;
    const auto found = sessions.find(session);
    return found != sessions.end() && found->second.time
               ? static_cast<int>(*found->second.time / std::chrono::minutes(1))
               : -1;
}

/// All sessions with minutes.
inline int writtenSessions(const WrittenDiary& diary)
{
    int sessions = 0;
    for (const auto& [day, written] : diary.days) {
        sessions += static_cast<int>(written.sessions.size());
    }
    return sessions;
}

} // namespace quadrille::test
