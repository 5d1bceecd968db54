// SPDX-License-Identifier: GPL-3.0-or-later
// What a unit counted between two readings, held against what the diary says of the same days.
#pragma once

#include "core/lived_days.h"

#include <optional>
#include <vector>

namespace quadrille
{

/// A difference over so many percent of what was counted is shown (design of the diary; common
/// practice, no source).
inline constexpr int counterTolerancePercent = 10;

/// Uses or minutes, counted and entered.
struct CountedAndEntered {
    std::int64_t counted = 0;
    std::int64_t entered = 0;
    /// Percent of what was counted; above 0: the diary says more. Nothing where none was counted.
    std::optional<double> differencePercent() const;
    /// Over the tolerance, without a quotient.
    bool differs() const;
    friend bool operator==(const CountedAndEntered&, const CountedAndEntered&) = default;
};

/// Two readings that follow one another. The diary is taken from the day of the first reading to
/// the day before the second: a unit is read at a visit, and the session of that day comes after it
/// (common practice, no source).
struct CounterComparison {
    CounterReadingId reading; ///< the later one, which carries the explanation
    Date from;                ///< days of the diary, both included
    Date to;
    std::optional<CountedAndEntered> uses = std::nullopt; ///< nothing where a reading lacks them
    std::optional<CountedAndEntered> time = std::nullopt; ///< ms; likewise
    bool countsBackwards = false; ///< a counter shows less than before: nothing is compared
    bool diaryIsKnown = false;    ///< received for all these days; else the diary lacks some
    bool isExplained = false;
    /// Something to be explained.
    bool differs() const
    {
        return countsBackwards ||
               (diaryIsKnown && ((uses && uses->differs()) || (time && time->differs())));
    }
    friend bool operator==(const CounterComparison&, const CounterComparison&) = default;
};

/// The comparisons of a course, the earliest first; none with fewer than two readings. Withdrawn
/// readings and entries count nowhere, nor do entries that came from a counter, nor those of nought
/// minutes. Every reading has an id.
std::vector<CounterComparison> compareCounter(const CourseRecords& records,
                                              const std::vector<CounterReading>& readings);

} // namespace quadrille
