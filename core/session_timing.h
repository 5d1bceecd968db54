// SPDX-License-Identifier: GPL-3.0-or-later
// How a session runs in time. Everything is counted in whole milliseconds, never by rounding a
// quotient.
#pragma once

#include "core/result.h"
#include "core/settings.h"

#include <cstdint>

namespace quadrille
{

/// A session, cut into contractions.
///
///     on phase       off        on phase
///   |-----------|-----------|-----------| ...
///    up plateau down          up plateau down
///   |<------- cycle ------->|
///
/// The session starts with a ramp up, or on some units with an off time. A contraction is one on
/// phase.
struct SessionTiming {
    Milliseconds onPhase{}; ///< on time, with the ramps that are added to it
    Milliseconds rampUp{};
    Milliseconds plateau{};
    Milliseconds rampDown{};
    Milliseconds offTime{};
    Milliseconds cycle{};
    Milliseconds session{};
    Milliseconds lead{}; ///< before the first on phase, on a unit that begins with an off time
    std::int64_t cyclesComplete = 0;
    Milliseconds remainder{};               ///< what is left after the lead and complete cycles
    std::int64_t contractionsStarted = 0;   ///< on phases begun before the session ends
    std::int64_t contractionsCompleted = 0; ///< on phases that end at or before the session's end
    Milliseconds
        cutContraction{}; ///< length of the on phase that the session's end cuts; zero if none
    Milliseconds totalOnTime{}; ///< inside on phases, ramps and the cut one included
    std::int64_t pulsesPerContraction = 0;
    std::int64_t pulses = 0; ///< inside on phases (bursts for kHz bursts)

    /// On phase / cycle, 0 … 1.
    double dutyCycle() const;
    /// Off time / on phase.
    double offOnRatio() const;
    friend bool operator==(const SessionTiming&, const SessionTiming&) = default;
};

/// Cuts a session into contractions. Error `impossible` or `outOfRange` names the setting where
/// settingsFindings() has a stop.
Result<SessionTiming> sessionTiming(const Settings& settings, RampHabit habit,
                                    CycleStart start = CycleStart::withOn);

/// The shortest session that completes `contractions` on phases: the last off time is left away.
/// `contractions` ≥ 1.
Milliseconds sessionLengthFor(std::int64_t contractions, const SessionTiming& timing);

/// Pulses at k / frequency, k = 0, 1, 2 …, strictly before the end of an on phase: ceil(on phase ×
/// frequency). The pulse clock starts again with each contraction.
std::int64_t pulsesIn(Milliseconds onPhase, PulseFrequency frequency);

/// The settings as the muscle meets them: without the lead, through which it rests. For the
/// force–fatigue model, which begins with the first contraction. `timing` is that of the settings.
Settings withoutLead(Settings settings, const SessionTiming& timing);

} // namespace quadrille
