// SPDX-License-Identifier: GPL-3.0-or-later
// Variants of a block beside the block as it stands: their figures, whether the force–fatigue model
// may compare them with it, and which setting would do what is asked of a variant.
#pragma once

#include "core/fatigue_memory.h"
#include "core/model_comparability.h"
#include "core/plan.h"
#include "core/settings_comparison.h"
#include "core/settings_search.h"

#include <optional>
#include <stop_token>
#include <variant>
#include <vector>

namespace quadrille
{

/// Variants that stand beside a block.
inline constexpr std::size_t mostVariants = 3;

/// A block, and what it might be instead. Figures are those of one of its sites.
struct WhatIf {
    Block plan;                  ///< as it stands; has `site`
    std::vector<Block> variants; ///< with the sites of `plan`
    std::size_t site = 0;
    Stimulator unit;

    const Settings& planned() const { return plan.sites[site].settings; }
    const Settings& varied(std::size_t variant) const
    {
        return variants[variant].sites[site].settings;
    }
};

/// A setting in base units, in all sites of the block as the plan has it; an amplitude in one site
/// only. Nothing empties an optional one.
Block withSetting(Block block, std::size_t site, Field field, std::optional<std::int64_t> count);
/// The off time and session length of `found` in all sites of the block.
Block withRest(Block block, const Settings& found);

/// Why the model must not compare a variant with the block. It may only where nothing but off time
/// and session length differ: amplitude and phase duration do not enter the model either, so that
/// it would call equal what is not.
enum class NotCompared {
    planCannotRun,        ///< a setting of the block stops it
    cannotRun,            ///< a setting of the variant stops it
    outsideModel,         ///< the model does not know the settings of either, or has no force
    modelMisleads,        ///< see the refusals
    amplitudeDiffers,     ///< last tolerated or ceiling
    phaseDurationDiffers, ///< the first phase
};

/// Whether the model compares two settings, by what differs between them.
struct Judgement {
    std::optional<NotCompared> missing = std::nullopt; ///< nothing: it may
    std::vector<ModelRefusal> refusals = {};
    bool differs = false; ///< in off time or session length: there is something to compare
};
Judgement judgementOf(const Settings& planned, const Settings& varied, RampHabit habit);

/// The block or one of its variants.
struct VariantFigures {
    /// Differences are to the block; nothing where it cannot run. Its model figures are nothing
    /// where they must not be shown.
    std::optional<ComparedCase> figures = std::nullopt;
    std::vector<Finding> findings; ///< of settings, unit, timing and dose; the gravest first
    Judgement judgement = {};      ///< of a variant against the block
    bool isShownByModel() const;   ///< has a fatigue ratio
};

struct WhatIfFigures {
    VariantFigures plan;
    std::vector<VariantFigures> variants;
    /// Why no fatigue ratio is shown at all: the block cannot run, or a variant asks for one and
    /// the block is outside the model.
    std::optional<NotCompared> noneCompared = std::nullopt;
};

/// The figures of compareSettings(), each variant against the block. A ratio of the block alone
/// says nothing: it is there, and the model is asked, when one of the variants may be compared and
/// differs.
/// `memory`: null does not ask the model, so that it takes no time.
WhatIfFigures whatIfFigures(const WhatIf& whatIf, FatigueMemory* memory);

/// "Keep the fatigue ratio above 0.70", by off time.
struct KeepRatio {
    double ratio = 0.7;
    KeptLength kept = KeptLength::session;
    friend bool operator==(const KeepRatio&, const KeepRatio&) = default;
};
/// "Fit 20 minutes", with the longest off time.
struct FitLength {
    Milliseconds longest{};
    KeptDose kept = KeptDose::contractions;
    friend bool operator==(const FitLength&, const FitLength&) = default;
};
/// "30 contractions", by session length.
struct GiveContractions {
    std::int64_t contractions = 1;
    friend bool operator==(const GiveContractions&, const GiveContractions&) = default;
};
/// What is asked of a variant. Amplitude is never searched.
using Wish = std::variant<KeepRatio, FitLength, GiveContractions>;

/// What was found, why no setting of the unit does it, or why the model must not be asked.
using WishAnswer = std::variant<SearchFound, SearchRefusal, Judgement>;

/// Searches from the variant as it stands. A fatigue ratio is only searched where the model may
/// compare the variant with the block; a variant that cannot run is told as such.
WishAnswer grant(const WhatIf& whatIf, std::size_t variant, const Wish& wish, FatigueMemory& memory,
                 const std::stop_token& stop = {});

} // namespace quadrille
