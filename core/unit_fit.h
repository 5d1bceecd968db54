// SPDX-License-Identifier: GPL-3.0-or-later
// What a unit can do instead of what is wanted: settings on its steps, inside its ranges, with
// timing that its channels can share. Nothing is decided here; the practitioner sees each
// difference first.
#pragma once

#include "core/plan.h"
#include "core/settings.h"
#include "core/stimulator.h"

#include <cstdint>
#include <optional>
#include <variant>
#include <vector>

namespace quadrille
{

/// Why a setting can't stay as it is.
enum class FitReason {
    waveformNotOffered, ///< also settings that only the other waveform has
    rampHabit,          ///< the same on phase needs another on time: ramps lie inside it, or not
    outsideRange,
    fixedOnUnit,
    betweenSteps,
    notOnUnit,    ///< the unit has no such setting
    rampsTooLong, ///< they no longer fit into the on time
    sharedTiming, ///< the channels share it with the first site
    otherPulse,   ///< an amplitude tolerated with another waveform or a shorter phase
};

/// Nothing, a setting in base units (see countIn()), or a waveform.
using FitValue = std::variant<std::monostate, std::int64_t, Waveform>;

struct FitChange {
    Field field = Field::none;
    FitValue wanted;
    FitValue possible; ///< nothing: it can't be had, and is to be found with the patient
    FitReason why = FitReason::outsideRange;
    friend bool operator==(const FitChange&, const FitChange&) = default;
};

/// Settings that the unit can be set to, and what had to change for it.
struct Fit {
    Settings settings;
    std::vector<FitChange> changes; ///< in the standard order; waveform first
};

/// The nearest value that the unit can be set to. An amplitude goes down, never up: what is above a
/// ceiling is not for a program to choose. Nothing when the unit's least is above it.
std::optional<std::int64_t> possibleCount(Field field, std::int64_t wanted,
                                          const CountRange& range);

/// Fits settings to a unit. `wantedHabit`: how the on time was meant, where they come from a unit
/// with another habit; the on phase stays as long as it was, as far as the steps allow. What was
/// tolerated with one waveform or phase duration is not known for another waveform or a longer
/// phase; a ceiling stays. Pulses that overlap and a unit that will not do are left to the
/// findings.
Fit fit(const Settings& wanted, const Stimulator& unit,
        std::optional<RampHabit> wantedHabit = std::nullopt);

/// A block fitted, and the changes of each of its sites.
struct BlockFit {
    Block block;
    std::vector<std::vector<FitChange>> changes;
    bool isNeeded() const;
};

/// Fits each site; where sites run at once on channels that share their timing, all take the timing
/// of the first.
BlockFit fit(const Block& wanted, const Stimulator& unit,
             std::optional<RampHabit> wantedHabit = std::nullopt);

} // namespace quadrille
