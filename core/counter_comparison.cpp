// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/counter_comparison.h"

#include <algorithm>
#include <cstdlib>
#include <tuple>

namespace quadrille
{

namespace
{

constexpr double whole = 100.0;

std::vector<CounterReading> inOrder(const std::vector<CounterReading>& readings)
{
    std::vector<CounterReading> standing;
    std::ranges::copy_if(readings, std::back_inserter(standing),
                         [](const CounterReading& reading) { return !reading.withdrawn; });
    std::ranges::sort(standing, {}, [](const CounterReading& reading) {
        return std::tuple(reading.readOn, reading.id);
    });
    return standing;
}

bool isKnownThrough(const CourseRecords& records, Date day)
{
    return std::ranges::any_of(records.receipts, [day](const DiaryReceived& receipt) {
        return !receipt.withdrawn && receipt.throughDate >= day;
    });
}

CounterComparison compare(const CourseRecords& records, const CounterReading& first,
                          const CounterReading& second)
{
    CounterComparison comparison{.reading = second.id.value(),
                                 .from = first.readOn,
                                 .to = second.readOn - std::chrono::days(1)};
    comparison.isExplained = second.explanation.has_value();
    comparison.diaryIsKnown = isKnownThrough(records, comparison.to);
    if (first.totalUses && second.totalUses) {
        comparison.uses = CountedAndEntered{*second.totalUses - *first.totalUses};
    }
    if (first.totalTime && second.totalTime) {
        comparison.time = CountedAndEntered{(*second.totalTime - *first.totalTime).count()};
    }
    comparison.countsBackwards = (comparison.uses && comparison.uses->counted < 0) ||
                                 (comparison.time && comparison.time->counted < 0);
    for (const DiaryEntry& entry : records.entries) {
        if (entry.withdrawn || entry.source == DiarySource::counter ||
            entry.duration <= Milliseconds(0) || entry.day < comparison.from ||
            entry.day > comparison.to) {
            continue;
        }
        if (comparison.uses) {
            ++comparison.uses->entered;
        }
        if (comparison.time) {
            comparison.time->entered += entry.duration.count();
        }
    }
    return comparison;
}

} // namespace

std::optional<double> CountedAndEntered::differencePercent() const
{
    return counted > 0 ? std::optional(whole * static_cast<double>(entered - counted) /
                                       static_cast<double>(counted))
                       : std::nullopt;
}

bool CountedAndEntered::differs() const
{
    return std::abs(entered - counted) * 100 > counterTolerancePercent * counted;
}

std::vector<CounterComparison> compareCounter(const CourseRecords& records,
                                              const std::vector<CounterReading>& readings)
{
    const std::vector<CounterReading> standing = inOrder(readings);
    std::vector<CounterComparison> comparisons;
    for (std::size_t i = 1; i < standing.size(); ++i) {
        comparisons.push_back(compare(records, standing[i - 1], standing[i]));
    }
    return comparisons;
}

} // namespace quadrille
