// SPDX-License-Identifier: GPL-3.0-or-later
// How sessions of a diary stand, counted and in dose. Counts add up over days.
#pragma once

#include "core/sitting.h"

namespace quadrille
{

enum class SessionState {
    toCome,
    notKnownYet, ///< past, and the diary has not come back so far
    done,        ///< from the threshold on
    partly,      ///< more than nothing
    missed,      ///< the diary has come back and says nothing, or nought minutes
    extra,       ///< beyond what is prescribed, whatever its length
};

/// Sessions of a day or of an interval. Those prescribed are done, partly, missed, not known yet or
/// to come; extra ones stand beside.
struct SessionCounts {
    int done = 0;
    int partly = 0;
    int missed = 0;
    int notKnownYet = 0;
    int toCome = 0;
    int extra = 0;
    int known() const { return done + partly + missed; }
    int prescribed() const { return known() + notKnownYet + toCome; }
    /// With any minutes at all.
    int delivered() const { return done + partly + extra; }
    friend bool operator==(const SessionCounts&, const SessionCounts&) = default;
    SessionCounts& operator+=(const SessionCounts& other);
    void add(SessionState state, int sessions = 1);
};

/// The dose of the prescribed sessions that are known. A reported session delivers at most what one
/// session was prescribed; the rest is over-use.
struct DoseCounts {
    SittingDose prescribed;
    SittingDose delivered;
    int sessionsWithoutDose = 0;  ///< known, but the plan's settings give no length
    int contractionsReported = 0; ///< sessions whose contractions the patient reported …
    int contractionsComputed = 0; ///< … and those computed from minutes and settings
    Milliseconds overUse{};       ///< extra sessions, and minutes beyond a session's length
    friend bool operator==(const DoseCounts&, const DoseCounts&) = default;
    DoseCounts& operator+=(const DoseCounts& other);
};

} // namespace quadrille
