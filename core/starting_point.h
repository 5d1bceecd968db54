// SPDX-License-Identifier: GPL-3.0-or-later
// Where a block can start from: a protocol of the literature or settings that the practice keeps.
// Each figure says how far it was checked; what is not known stays empty, and a range stays a
// range. Nothing here chooses for the practitioner.
#pragma once

#include "core/house_settings.h"
#include "core/plan.h"
#include "core/unit_fit.h"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// How far a figure was checked.
enum class Standing {
    read,          ///< in the source itself
    readElsewhere, ///< in a text that quotes the source
    fromMemory,    ///< not confirmed against the paper
    assumed,       ///< the source does not say; common practice
    own,           ///< the practice's own
    doubtful,      ///< too uncertain to be offered: left empty
    notSaid,       ///< the source does not say, or the text that was read does not
};

/// True for a figure that may be offered, if only with a warning.
constexpr bool isOffered(Standing standing)
{
    return standing != Standing::doubtful && standing != Standing::notSaid;
}
/// True for what must be said before the figure is used.
constexpr bool needsConfirming(Standing standing)
{
    return standing == Standing::fromMemory || standing == Standing::assumed;
}

/// A figure in base units (see countIn()), or the range that the source gives.
struct CitedCount {
    std::int64_t least = 0; ///< means nothing unless the standing is offered
    std::int64_t most = 0;
    Standing standing = Standing::notSaid;
    std::string note = {}; ///< what else the source says of it

    bool isRange() const { return least != most; }
    /// The one figure that is offered; nothing for a range and for what stays empty.
    std::optional<std::int64_t> figure() const
    {
        return isOffered(standing) && !isRange() ? std::optional(least) : std::nullopt;
    }
    friend bool operator==(const CitedCount&, const CitedCount&) = default;
};

struct CitedWords {
    std::string text;
    Standing standing = Standing::notSaid;
    friend bool operator==(const CitedWords&, const CitedWords&) = default;
};

/// A waveform, or all that the source's word covers ("biphasic").
struct CitedWaveform {
    std::vector<Waveform> any;
    Standing standing = Standing::notSaid;
    std::string note = {};
    friend bool operator==(const CitedWaveform&, const CitedWaveform&) = default;
};

/// Whether ramps lie inside the on time or are added to it; nothing where the source does not say.
struct CitedRampRule {
    std::optional<RampHabit> habit = std::nullopt;
    Standing standing = Standing::notSaid;
    friend bool operator==(const CitedRampRule&, const CitedRampRule&) = default;
};

enum class CarePlace { home, clinic, intensiveCare, notSaid };

/// What a starting point is good for.
enum class PointUse {
    plan,
    subTetanic,   ///< single twitches without on and off times: no plan of contractions
    citationOnly, ///< too little is published
};

struct StartingPoint {
    std::string name;     ///< "Feil 2011, garment electrodes"; what a block remembers
    std::string citation; ///< authors, journal, year, volume and page; empty for one's own
    Standing citationStanding = Standing::read; ///< of volume and page
    std::vector<std::string> muscles;
    std::vector<std::string> muscleWords; ///< other words that find it
    std::vector<std::string> conditions;
    std::vector<std::string> conditionWords;
    CarePlace place = CarePlace::notSaid;
    PointUse use = PointUse::plan;
    std::string note;
    CitedWaveform waveform;
    /// Settings, sessionsPerDay, weekdays (days a week) and weeks; sessionLength where the dose is
    /// a time.
    std::map<Field, CitedCount> figures;
    CitedCount contractions; ///< of one session, where the dose is a count
    CitedRampRule rampRule;
    CitedWords intensity;
    CitedWords position;
    std::optional<HouseSettingsId> house = std::nullopt; ///< of one's own
    friend bool operator==(const StartingPoint&, const StartingPoint&) = default;
};

/// The cited figure; one that is not said where there is none.
CitedCount citedIn(const StartingPoint& point, Field field);
StartingPoint startingPointFrom(const HouseSettings& kept);

/// What a starting point amounts to. Whole contractions only, on time with the ramps that are added
/// to it; `most` differs from `least` where the sessions of a week are a range.
struct PointDose {
    std::int64_t contractions = 0; ///< of one session
    Milliseconds onPhase{};
    Milliseconds plateau{};
    Milliseconds sessionOnTime{};
    struct Week {
        std::int64_t contractions = 0;
        Milliseconds onTime{};
    };
    std::optional<Week> least = std::nullopt; ///< nothing while days or sessions are not known
    std::optional<Week> most = std::nullopt;
};
/// Counted with ramps as `habit` says, by session_timing.h. Nothing where on time or dose are not
/// offered as one figure, or, with a dose in minutes, the off time;
/// nor where ramps that are added are a range.
std::optional<PointDose> doseOf(const StartingPoint& point, RampHabit habit);

/// Why a starting point can't be applied.
enum class CannotApply { noUnit, unitWillNotDo, noSite, subTetanic, citationOnly };
std::optional<CannotApply> cannotApply(const StartingPoint& point, const Block* block,
                                       const std::optional<Stimulator>& unit);

/// What becomes of one figure.
enum class Outcome {
    taken,
    unitGivesOther,
    choose,    ///< a range: what stands is kept, whether inside it or not
    leftEmpty, ///< nothing is offered: what stands is kept
};

struct AppliedFigure {
    Field field = Field::none; ///< sessionLength also for a dose in contractions
    Outcome outcome = Outcome::leftEmpty;
    FitValue becomes;                            ///< of the first site; nothing: it has no meaning
    std::optional<FitReason> why = std::nullopt; ///< where the unit gives another
};

struct AppliedPoint {
    Block block;
    std::vector<AppliedFigure> figures; ///< in the order of the list of a plan; waveform first
    /// Where the unit counts its ramps otherwise than the source: what is meant, and what comes out
    /// of the unit's steps.
    std::optional<Milliseconds> plateauMeant = std::nullopt;
    std::optional<Milliseconds> plateauGiven = std::nullopt;
    /// Of a dose in contractions: what the session of the first site completes; nothing where the
    /// unit's timer can't do it.
    std::optional<std::int64_t> contractions = std::nullopt;
    bool forgotTolerated = false; ///< found with another pulse
};

/// Applies a starting point to all sites of a block, as far as the unit can be set to it; needs
/// cannotApply() to say nothing. No amplitude is ever set; one that was tolerated with another
/// waveform or a shorter phase is forgotten. The block remembers the name.
AppliedPoint applied(const StartingPoint& point, const Block& block, const Stimulator& unit);

/// Marks each block of `after` that has an origin of `before` and asks for something else than it
/// did; weeks, amplitudes, pads and words do not count.
void markChangedSince(const std::vector<Block>& before, std::vector<Block>& after);

} // namespace quadrille
