// SPDX-License-Identifier: GPL-3.0-or-later
// Answers to "which setting does it?": exact scans over the steps of the stimulator. Each answer
// can be set on the unit as it stands.
#pragma once

#include "core/fatigue_memory.h"
#include "core/result.h"
#include "core/session_timing.h"
#include "core/settings.h"
#include "core/stimulator.h"

#include <cstdint>
#include <stop_token>
#include <variant>

namespace quadrille
{

/// Why no setting of the unit does it.
enum class NoSetting {
    sessionTooShort,   ///< even the shortest off time needs a longer session than allowed
    sessionTimerEnds,  ///< the unit's session timer does not go so far; `limit` is where it ends
    betweenTimerSteps, ///< each length that the timer offers ends in the middle of things
    ratioNotReached,   ///< the longest off time keeps less of the force; `limit` is what it keeps
    noContractions,    ///< not a single whole contraction
    noForce,           ///< nothing is recruited, so there is no fatigue ratio
    offTimeIsFixed,    ///< the unit has one off time only, and it does not do
    stopped,           ///< the person did not wait for the answer
};

struct SearchRefusal {
    NoSetting reason = NoSetting::noContractions;
    Amount limit; ///< see NoSetting; the unit tells whether there is one
};

/// What was found: the settings with one or two values changed, and their timing.
struct SearchFound {
    Settings settings;
    SessionTiming timing;
};
using SearchAnswer = std::variant<SearchFound, SearchRefusal>;

/// The shortest session on the unit's timer that completes `contractions` ≥ 1, and no more where
/// the timer's steps allow it. Errors: those of sessionTiming().
Result<SearchAnswer> sessionForContractions(const Settings& settings, const Stimulator& stimulator,
                                            std::int64_t contractions);

/// What stays as it is while the off time grows.
enum class KeptDose {
    contractions, ///< contractions completed
    totalOnTime,  ///< total on time, a cut contraction included
};
/// The longest off time with which the dose of `settings` still fits into a session of at most
/// `longestSession`. The session length is set to go with it. Errors: those of sessionTiming().
Result<SearchAnswer> longestOffTime(const Settings& settings, const Stimulator& stimulator,
                                    KeptDose kept, Milliseconds longestSession);

/// What stays as it is while the off time changes.
enum class KeptLength {
    session,      ///< session length; contractions change
    contractions, ///< contractions completed; the session length changes
};
/// The smallest off time on the unit with which the fatigue ratio (force–time integral, last whole
/// contraction / first) stays at or above `ratio` (above 0): bisection over the unit's steps, since
/// a longer rest tires less, then step by step downwards as long as the ratio holds. `stop` ends it
/// before the next off time is tried. Errors: those of predictFatigue(), `outOfRange` for a ratio
/// that is not above 0 and finite.
Result<SearchAnswer> smallestOffTime(const Settings& settings, const Stimulator& stimulator,
                                     double ratio, KeptLength kept, FatigueMemory& memory,
                                     const FatigueOptions& options = {},
                                     const std::stop_token& stop = {});

} // namespace quadrille
