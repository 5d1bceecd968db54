// SPDX-License-Identifier: GPL-3.0-or-later
// Findings and sums over a whole block and plan: what the plan page shows and the issue list
// checks.
#pragma once

#include "core/dose.h"
#include "core/finding.h"
#include "core/plan.h"
#include "core/session_timing.h"

#include <optional>
#include <vector>

namespace quadrille
{

/// One week of one site.
struct WeekFigures {
    std::int64_t sessions = 0;
    std::int64_t contractionsStarted = 0;
    std::int64_t contractionsCompleted = 0;
    Milliseconds onTime{};
    std::int64_t pulses = 0;
    std::optional<TotalCharge> charge =
        std::nullopt; ///< nothing while no amplitude or pad is known
};

/// The week of one session repeated `sessions` times.
WeekFigures weekOf(const SessionTiming& timing, std::int64_t sessions,
                   std::optional<ChargePerPhase> phaseCharge);

/// All figures of one site of a block.
struct SiteFigures {
    std::optional<SessionTiming> timing = std::nullopt; ///< nothing where a finding says stop
    std::optional<Dose> dose = std::nullopt;            ///< nothing without amplitude or pads
    std::optional<WeekFigures> week =
        std::nullopt; ///< nothing without timing, or while days or sessions are impossible
    std::vector<Finding> findings; ///< the gravest first
};

/// All figures of a block.
struct BlockFigures {
    std::vector<SiteFigures> sites; ///< in the block's order
    std::vector<Finding> findings;  ///< of the block itself
    std::optional<Milliseconds>
        sitting{}; ///< one session: the longest site, or all of them in turn
    std::optional<std::int64_t>
        contractions{}; ///< completed in one sitting: the most of any site, or the sum in turn
    std::optional<Milliseconds> weekOnTime{}; ///< total on time a week, the same way
    std::optional<std::int64_t> weekContractions{};
    /// A stop anywhere: the block cannot be issued.
    bool hasStop() const;
};

BlockFigures blockFigures(const Block& block, const Stimulator& stimulator);

/// The share by which the weekly on time grows from one block to the next above which the step is
/// called large. Common practice, no source; a preference of the practice.
inline constexpr double largeStepShare = 0.5;
/// A finding when the weekly on time grows by more than `largeShare` from `before` to `after`.
std::optional<Finding> stepFinding(const BlockFigures& before, const BlockFigures& after,
                                   double largeShare = largeStepShare);

} // namespace quadrille
