// SPDX-License-Identifier: GPL-3.0-or-later
// Seven days, four weeks, twelve months: common practice, no source. Days counted by hand on a
// calendar.
#include "tests/support/fixed_clock.h"

#include "core/backup_retention.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille
{
namespace
{

using std::chrono::days;
using std::chrono::hours;
using testing::ElementsAre;
using tests::day;

/// The days whose copies stay, the earliest first.
std::vector<std::string> keptOf(const std::vector<Moment>& copies, Date today)
{
    const auto keep = copiesToKeep(copies, today);
    std::vector<std::string> kept;
    for (std::size_t i = 0; i < copies.size(); ++i) {
        if (keep[i]) {
            kept.push_back(isoMoment(copies[i]).substr(0, 10));
        }
    }
    std::ranges::sort(kept);
    return kept;
}

std::vector<Moment> dailyFrom(Date first, Date last)
{
    std::vector<Moment> copies;
    for (Date date = first; date <= last; date += days(1)) {
        copies.push_back(Moment(date) + hours(8));
    }
    return copies;
}

TEST(CopiesToKeep, KeepsAWeekOfDaysAMonthOfWeeksAndAYearOfMonths)
{
    // Thursday 12 March 2026; weeks end on Sundays 22 February, 1 March, 8 March.
    EXPECT_THAT(keptOf(dailyFrom(day(2024, 6, 1), day(2026, 3, 12)), day(2026, 3, 12)),
                ElementsAre("2025-04-30", "2025-05-31", "2025-06-30", "2025-07-31", "2025-08-31",
                            "2025-09-30", "2025-10-31", "2025-11-30", "2025-12-31", "2026-01-31",
                            "2026-02-22", "2026-02-28", "2026-03-01", "2026-03-06", "2026-03-07",
                            "2026-03-08", "2026-03-09", "2026-03-10", "2026-03-11", "2026-03-12"));
}

TEST(CopiesToKeep, KeepsTheLastOfTwoOnOneDay)
{
    const Moment morning = Moment(day(2026, 3, 12)) + hours(8);
    EXPECT_THAT(copiesToKeep({morning, morning + hours(9), morning + hours(4)}, day(2026, 3, 12)),
                ElementsAre(false, true, false));
}

TEST(CopiesToKeep, NeverLetsTheLatestGoHoweverOldItIs)
{
    const Moment old = Moment(day(2019, 1, 1));
    EXPECT_THAT(copiesToKeep({old, old - days(1)}, day(2026, 3, 12)), ElementsAre(true, false));
    EXPECT_THAT(copiesToKeep({}, day(2026, 3, 12)), testing::IsEmpty());
}

TEST(CopiesToKeep, KeepsACopyFromTheFuture)
{
    const Moment future = Moment(day(2031, 1, 1));
    EXPECT_THAT(
        copiesToKeep({future, future + days(1), Moment(day(2026, 3, 12))}, day(2026, 3, 12)),
        ElementsAre(true, true, true));
}

TEST(CopiesToKeep, NeverKeepsMoreThanTwentyThree)
{
    for (Date today = day(2027, 12, 25); today < day(2028, 3, 10); today += days(1)) {
        const auto keep = copiesToKeep(dailyFrom(today - days(800), today), today);
        EXPECT_LE(std::ranges::count(keep, true), 7 + 4 + 12);
        EXPECT_GE(std::ranges::count(keep, true), 7 + 3 + 11 - 2);
    }
}

} // namespace
} // namespace quadrille
