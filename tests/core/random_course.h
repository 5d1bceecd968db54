// SPDX-License-Identifier: GPL-3.0-or-later
// Courses put together by chance, for what must hold of any course.
#pragma once

#include "tests/core/examples.h"

#include "core/adherence.h"

#include <algorithm>
#include <cstdint>
#include <random>

namespace quadrille::test
{

/// Plans, pauses and a diary such as a practice might have, and stranger ones. One seed, one
/// course.
class RandomCourse
{
public:
    explicit RandomCourse(std::uint64_t seed)
        : m_source(seed)
    {
        records.course.startDate = Date(std::chrono::days(between(20'000, 20'600)));
        asOf = dayAfterStart(between(-5, 90));
        addPlans();
        addPauses();
        addDiary();
        if (chance(10)) {
            records.course.endDate = dayAfterStart(between(0, 80));
        }
        if (chance(80)) {
            records.receipts.emplace_back().throughDate =
                std::min(asOf, dayAfterStart(between(-3, 90)));
        }
    }

    std::int64_t between(std::int64_t least, std::int64_t most)
    {
        return std::uniform_int_distribution<std::int64_t>(least, most)(m_source);
    }
    bool chance(int percent) { return between(1, 100) <= percent; }
    Date dayAfterStart(std::int64_t days) const
    {
        return records.course.startDate + std::chrono::days(days);
    }
    template <class List>
    void shuffle(List& list)
    {
        std::ranges::shuffle(list, m_source);
    }
    /// The next session of a day.
    DiaryEntry entryOn(Date day, Milliseconds duration) const
    {
        DiaryEntry entry;
        entry.day = day;
        entry.sessionNumber =
            1 + static_cast<int>(std::ranges::count(records.entries, day, &DiaryEntry::day));
        entry.duration = duration;
        return entry;
    }
    DateInterval all() const { return {dayAfterStart(-10), dayAfterStart(400)}; }

    CourseRecords records;
    Date asOf;

private:
    int small(int least, int most) { return static_cast<int>(between(least, most)); }

    Block block()
    {
        Block made = someBlock();
        made.weeks = small(1, 4);
        made.sessionsPerDay = small(1, 3);
        if (chance(50)) {
            made.schedule = WeekdaySet::fromBits(static_cast<unsigned>(between(1, 127)));
        } else {
            made.schedule = DaysPerWeek{small(1, 7)};
        }
        made.siteOrder = chance(50) ? SiteOrder::together : SiteOrder::oneAfterAnother;
        made.sites.resize(static_cast<std::size_t>(between(1, 2)), made.sites.front());
        for (Site& site : made.sites) {
            site.settings.sessionLength = std::chrono::minutes(between(5, 30));
            site.settings.offTime = std::chrono::seconds(between(2, 20));
        }
        return made;
    }

    void addPlans()
    {
        const int plans = small(1, 3);
        for (int number = 1; number <= plans; ++number) {
            Plan& plan = records.plans.emplace_back();
            plan.number = number;
            plan.fromDate = dayAfterStart(number == 1 ? 0 : between(0, 60));
            plan.stimulator = someStimulator();
            const int blocks = small(1, 3);
            for (int i = 0; i < blocks; ++i) {
                plan.blocks.push_back(block());
            }
        }
    }

    void addPauses()
    {
        for (std::int64_t first = between(0, 100); first < 80; first += between(10, 60)) {
            Pause& pause = records.pauses.emplace_back();
            pause.fromDate = dayAfterStart(first);
            pause.toDate = pause.fromDate + std::chrono::days(between(0, 9));
        }
    }

    void addDiary()
    {
        const int zeal = small(0, 100);
        for (Date day = dayAfterStart(-2); day <= asOf; day += std::chrono::days(1)) {
            for (int session = 1; session <= 4 && chance(zeal); ++session) {
                DiaryEntry entry = entryOn(day, std::chrono::minutes(between(0, 40)));
                if (chance(30)) {
                    entry.contractions = small(0, 200);
                }
                records.entries.push_back(entry);
            }
        }
    }

    std::mt19937_64 m_source;
};

} // namespace quadrille::test
