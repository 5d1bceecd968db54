// SPDX-License-Identifier: GPL-3.0-or-later
// How much of what was prescribed was done, over any days of a course.
#pragma once

#include "core/lived_days.h"

#include <cstdint>
#include <optional>

namespace quadrille
{

/// So much of a whole, never more. Both are counted in the same unit.
struct Share {
    std::int64_t part = 0;
    std::int64_t whole = 1; ///< above 0
    /// 0 … 1.
    double value() const { return static_cast<double>(part) / static_cast<double>(whole); }
    /// Exact, without a quotient.
    bool reaches(int percent) const { return 100 * part >= percent * whole; }
    friend bool operator==(const Share&, const Share&) = default;
};

/// More than was prescribed. Never credit.
struct OverUse {
    int sessions = 0;    ///< extra ones
    Milliseconds time{}; ///< of extra sessions, and beyond the length of prescribed ones
    friend bool operator==(const OverUse&, const OverUse&) = default;
};

/// The figures of an interval. A figure that does not exist (nothing prescribed, nothing known) is
/// nothing, never 0. Sessions that are not known yet or to come are in no figure but their counts.
struct AdherenceFigures {
    Date from;
    Date to; ///< the last day
    SessionCounts sessions;

    std::optional<Share> session = std::nullopt; ///< session adherence: done / prescribed
    /// Dose adherence, each session capped at what was prescribed: in ms on the unit, in completed
    /// contractions, in ms inside on phases. Nothing where a plan's settings give no dose.
    std::optional<Share> time = std::nullopt;
    std::optional<Share> contractions = std::nullopt;
    std::optional<Share> onTime = std::nullopt;
    /// Contractions come from the entry where the patient reported them, else from its minutes and
    /// the plan's settings. On time is always computed from the minutes.
    int contractionsReported = 0; ///< sessions
    int contractionsComputed = 0; ///< sessions

    std::optional<int> sessionsDelivered = std::nullopt; ///< with any minutes, extra ones too
    std::optional<OverUse> overUse = std::nullopt;
    /// The most days in a row on which nothing was done, rest days included. Days that are paused,
    /// not known yet or under no plan end a row and are not in it.
    std::optional<int> longestGap = std::nullopt;
    friend bool operator==(const AdherenceFigures&, const AdherenceFigures&) = default;
};

/// The figures of the days from `from` to `to`, both included. Counts of two intervals that touch
/// add up to those of both together.
AdherenceFigures figuresBetween(const CourseAsLived& course, Date from, Date to);

} // namespace quadrille
