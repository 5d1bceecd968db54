// SPDX-License-Identifier: GPL-3.0-or-later
// What the force–fatigue model may say of a block: a comparison with blocks that differ from it in
// off time or session length, and nothing else.
#pragma once

#include "core/course.h"
#include "core/fatigue_memory.h"
#include "core/model_comparability.h"
#include "core/plan.h"

#include <optional>
#include <vector>

namespace quadrille
{

/// Why no fatigue ratio is shown.
enum class NoFatigueRatio {
    noBlockBefore,
    muscleNotBefore, ///< the block before has no site on this muscle and side
    cannotRun,       ///< the settings of either block
    outsideModel,    ///< the model does not know the settings of either block, or has no force
    modelMisleads,   ///< see the refusals of the comparability
};

/// One site against the same muscle in the block before.
struct FatigueStep {
    std::optional<NoFatigueRatio> missing = std::nullopt; ///< nothing: both ratios are there
    std::optional<FatigueRatio> now = std::nullopt;
    std::optional<FatigueRatio> before = std::nullopt;
    ModelComparability comparability = {};
    std::vector<ModelLimit> limits = {}; ///< what must be said beside the ratios
};

/// Each site of a block in turn. Sites are found in the block before by muscle and side, the second
/// on the same muscle by the second. `before`: null for the first block.
std::vector<FatigueStep> fatigueSteps(const Block& block, const Block* before,
                                      const Stimulator& unit, FatigueMemory& memory,
                                      const FatigueOptions& options = {});

/// Whether two sites are on one muscle, in any case of letters, and on one side.
bool isSameSite(const Site& one, const Site& other);

/// The place of the site in the block before that `block.sites[site]` is held against.
std::optional<std::size_t> sameSiteBefore(const Block& block, std::size_t site,
                                          const Block& before);

/// Peak force of each whole contraction of a session as a share of the first one's; empty where the
/// model has none.
std::vector<double> peakShares(const Settings& settings, const Stimulator& unit,
                               const FatigueOptions& options = {});

/// The ratio of one muscle in a course week.
struct WeekFatigue {
    CourseWeek week;
    std::optional<FatigueRatio> ratio = std::nullopt; ///< nothing where it must not be compared
};

/// The muscle of `site` through all weeks of a course, each under the plan in force at its end.
/// Only weeks that the model may compare with `site` on `unit` have a ratio, and none has one
/// unless at least two of them differ in off time or session length: one ratio alone says nothing.
std::vector<WeekFatigue> fatigueByWeek(const Course& course, const std::vector<Plan>& plans,
                                       const Site& site, const Stimulator& unit,
                                       FatigueMemory& memory, const FatigueOptions& options = {});

} // namespace quadrille
