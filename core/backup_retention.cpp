// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/backup_retention.h"

#include <algorithm>
#include <map>
#include <optional>

namespace quadrille
{

namespace
{

using std::chrono::days;

constexpr int keptDays = 7;
constexpr int keptWeeks = 4;
constexpr int keptMonths = 12;

int monthOf(Date day)
{
    const std::chrono::year_month_day date(day);
    return static_cast<int>(date.year()) * 12 +
           static_cast<int>(static_cast<unsigned>(date.month()));
}

int weekOf(Date day)
{
    constexpr int thursday = 3; // 1 January 1970 was a Thursday
    const auto sinceMonday = day.time_since_epoch().count() + thursday;
    return static_cast<int>(sinceMonday >= 0 ? sinceMonday / 7 : (sinceMonday - 6) / 7);
}

int dayOf(Date day)
{
    return static_cast<int>(day.time_since_epoch().count());
}

/// Keeps the last copy of each of the last `count` spans.
void keepLastOfEach(const std::vector<Moment>& copies, int (*spanOf)(Date), Date today, int count,
                    std::vector<bool>& keep)
{
    std::map<int, std::size_t> lastOf;
    for (std::size_t i = 0; i < copies.size(); ++i) {
        const int span = spanOf(std::chrono::floor<days>(copies[i]));
        const auto [place, isFirst] = lastOf.try_emplace(span, i);
        if (!isFirst && copies[place->second] <= copies[i]) {
            place->second = i;
        }
    }
    for (const auto& [span, index] : lastOf) {
        if (span > spanOf(today) - count) {
            keep[index] = true;
        }
    }
}

} // namespace

std::vector<bool> copiesToKeep(const std::vector<Moment>& copies, Date today)
{
    std::vector<bool> keep(copies.size(), false);
    keepLastOfEach(copies, dayOf, today, keptDays, keep);
    keepLastOfEach(copies, weekOf, today, keptWeeks, keep);
    keepLastOfEach(copies, monthOf, today, keptMonths, keep);
    for (std::size_t i = 0; i < copies.size(); ++i) {
        if (std::chrono::floor<days>(copies[i]) > today) {
            keep[i] = true;
        }
    }
    const auto latest = std::ranges::max_element(copies);
    if (latest != copies.end()) {
        keep[static_cast<std::size_t>(latest - copies.begin())] = true;
    }
    return keep;
}

} // namespace quadrille
