// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session_counts.h"

namespace quadrille
{

void SessionCounts::add(SessionState state, int sessions)
{
    switch (state) {
    case SessionState::toCome:
        toCome += sessions;
        break;
    case SessionState::notKnownYet:
        notKnownYet += sessions;
        break;
    case SessionState::done:
        done += sessions;
        break;
    case SessionState::partly:
        partly += sessions;
        break;
    case SessionState::missed:
        missed += sessions;
        break;
    case SessionState::extra:
        extra += sessions;
        break;
    }
}

SessionCounts& SessionCounts::operator+=(const SessionCounts& other)
{
    done += other.done;
    partly += other.partly;
    missed += other.missed;
    notKnownYet += other.notKnownYet;
    toCome += other.toCome;
    extra += other.extra;
    return *this;
}

DoseCounts& DoseCounts::operator+=(const DoseCounts& other)
{
    prescribed += other.prescribed;
    delivered += other.delivered;
    sessionsWithoutDose += other.sessionsWithoutDose;
    contractionsReported += other.contractionsReported;
    contractionsComputed += other.contractionsComputed;
    overUse += other.overUse;
    return *this;
}

} // namespace quadrille
