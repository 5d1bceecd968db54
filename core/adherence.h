// SPDX-License-Identifier: GPL-3.0-or-later
// The adherence of a course: over an interval, by week, by block, since the last follow-up, lately,
// and how it moves.
#pragma once

#include "core/adherence_figures.h"
#include "core/lived_days.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace quadrille
{

/// A week of the course, or the part of it that lies in the interval.
struct WeekAdherence {
    CourseWeek week;
    AdherenceFigures figures;
    /// The whole week lies in the interval, something is prescribed in it and every session of it
    /// is known.
    bool isFullyKnown = false;
    /// The practice's threshold for a week; nothing while the week is not fully known.
    std::optional<bool> reachesThreshold = std::nullopt;
    friend bool operator==(const WeekAdherence&, const WeekAdherence&) = default;
};

/// The days on which a block of a plan was in force, pauses included, within the interval.
struct BlockAdherence {
    int plan = 1;          ///< the plan's number
    std::size_t block = 0; ///< its place in the plan
    AdherenceFigures figures;
    friend bool operator==(const BlockAdherence&, const BlockAdherence&) = default;
};

/// How session adherence moves: the last two fully known weeks of the interval together, against
/// the two fully known weeks before them. Weeks that are not fully known are passed over.
struct AdherenceTrend {
    CourseWeek lastWeek; ///< the latest of the four
    Share recent;
    Share before;
    /// Percentage points; above 0: more than before.
    double difference() const { return 100.0 * (recent.value() - before.value()); }
    friend bool operator==(const AdherenceTrend&, const AdherenceTrend&) = default;
};

/// Everything of a course, as it stands on `asOf`.
struct Adherence {
    Date asOf;
    std::optional<Date> knownThrough = std::nullopt; ///< see CourseAsLived
    AdherenceFigures interval;                       ///< the days asked for
    std::vector<WeekAdherence> weeks = {};           ///< of the interval, where a block is in force
    std::vector<BlockAdherence> blocks = {};         ///< likewise
    std::optional<Share> weeksReaching = std::nullopt; ///< of the fully known weeks
    std::optional<AdherenceTrend> trend = std::nullopt;
    AdherenceFigures last7Days;  ///< `asOf` and the 6 days before
    AdherenceFigures last14Days; ///< `asOf` and the 13 days before
    /// The 14 days up to the one through which the diary is known.
    std::optional<AdherenceFigures> last14KnownDays = std::nullopt;
    /// The last follow-up held before `asOf`, and the days from it to `asOf`; without one since the
    /// start of the course.
    std::optional<Date> lastFollowUp = std::nullopt;
    AdherenceFigures sinceLastFollowUp;
};

/// Days from … to, both included; `from` ≤ `to`.
struct DateInterval {
    Date from;
    Date to;
};

/// From the start of the course to `asOf`, at least its first day.
DateInterval wholeCourse(const Course& course, Date asOf);

Adherence adherenceOf(const CourseRecords& records, const AdherenceRules& rules,
                      const DateInterval& interval, Date asOf);

/// The weeks of `interval`, from days judged by courseAsLived().
std::vector<WeekAdherence> weeksBetween(const CourseAsLived& course, const AdherenceRules& rules,
                                        const DateInterval& interval);
/// Nothing with fewer than four fully known weeks.
std::optional<AdherenceTrend> trendOf(const std::vector<WeekAdherence>& weeks);

} // namespace quadrille
