// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/work_rest_cue.h"

#include <algorithm>
#include <array>
#include <utility>

namespace quadrille
{

CueMoment cueAt(const SessionTiming& timing, Milliseconds elapsed)
{
    const Milliseconds at = std::max(elapsed, Milliseconds(0));
    if (at >= timing.session || timing.cycle <= Milliseconds(0)) {
        return {.phase = CuePhase::over, .contraction = timing.contractionsStarted};
    }
    if (at < timing.lead) {
        const Milliseconds begins = std::min(timing.lead, timing.session);
        return {.phase = CuePhase::rest,
                .left = begins - at,
                .length = begins,
                .contraction = 0,
                .sessionLeft = timing.session - at};
    }
    const std::int64_t cycles = (at - timing.lead) / timing.cycle;
    const Milliseconds cycleStart = timing.lead + cycles * timing.cycle;
    const std::array<std::pair<CuePhase, Milliseconds>, 4> parts{{
        {CuePhase::rampUp, timing.rampUp},
        {CuePhase::hold, timing.plateau},
        {CuePhase::rampDown, timing.rampDown},
        {CuePhase::rest, timing.offTime},
    }};
    CueMoment cue{.contraction = cycles + 1, .sessionLeft = timing.session - at};
    Milliseconds begins = cycleStart;
    for (const auto& [phase, length] : parts) {
        const Milliseconds ends = std::min(begins + length, timing.session);
        if (at < ends) {
            cue.phase = phase;
            cue.left = ends - at;
            cue.length = ends - begins;
            break;
        }
        begins += length;
    }
    return cue;
}

std::optional<Milliseconds> nextCueChange(const SessionTiming& timing, Milliseconds elapsed)
{
    const CueMoment cue = cueAt(timing, elapsed);
    return cue.phase == CuePhase::over
               ? std::nullopt
               : std::optional(std::max(elapsed, Milliseconds(0)) + cue.left);
}

void PractiseClock::start(Milliseconds now)
{
    if (!m_since) {
        m_since = now;
    }
}

void PractiseClock::pause(Milliseconds now)
{
    m_before = elapsed(now);
    m_since.reset();
}

void PractiseClock::reset()
{
    m_before = Milliseconds(0);
    m_since.reset();
}

Milliseconds PractiseClock::elapsed(Milliseconds now) const
{
    return m_since ? m_before + std::max(now - *m_since, Milliseconds(0)) : m_before;
}

} // namespace quadrille
