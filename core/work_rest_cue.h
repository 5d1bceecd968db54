// SPDX-License-Identifier: GPL-3.0-or-later
// What physiotherapist and patient see while they practise the planned rhythm together: which part
// of the cycle runs, and for how long. A cue for two people; it controls no stimulator.
#pragma once

#include "core/session_timing.h"

#include <cstdint>
#include <optional>

namespace quadrille
{

/// The parts of a cycle, and what follows the session.
enum class CuePhase { rampUp, hold, rampDown, rest, over };

/// The cue at one moment of the session.
struct CueMoment {
    CuePhase phase = CuePhase::rampUp;
    Milliseconds left{};          ///< until the phase changes; zero once the session is over
    Milliseconds length{};        ///< of the phase, as the session lets it run
    std::int64_t contraction = 1; ///< the one that runs, or ran last; 0 before the first
    Milliseconds sessionLeft{};
    friend bool operator==(const CueMoment&, const CueMoment&) = default;
};

/// The cue `elapsed` after the session's start (before it: the start). At the instant of a change
/// the new phase runs. Phases of no length are skipped; the session's end cuts the one it falls in.
CueMoment cueAt(const SessionTiming& timing, Milliseconds elapsed);

/// When the phase changes next, from the session's start; nothing once it is over.
std::optional<Milliseconds> nextCueChange(const SessionTiming& timing, Milliseconds elapsed);

/// A clock that can be stopped and goes on. The caller brings the time, from any steady clock.
class PractiseClock
{
public:
    void start(Milliseconds now);
    void pause(Milliseconds now);
    /// Back to the beginning, stopped.
    void reset();
    bool isRunning() const { return m_since.has_value(); }
    /// Time that has run in all; a clock that goes backwards counts as standing.
    Milliseconds elapsed(Milliseconds now) const;

private:
    Milliseconds m_before{};
    std::optional<Milliseconds> m_since;
};

} // namespace quadrille
