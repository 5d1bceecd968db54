// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/practise_cue.h"

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr Milliseconds tick{100};

} // namespace

PractiseCue::PractiseCue(SteadyTime now, QObject* parent)
    : QObject(parent)
    , m_now(std::move(now))
{
    m_timer.setSingleShot(true);
    m_timer.setTimerType(Qt::PreciseTimer);
    connect(&m_timer, &QTimer::timeout, this, &PractiseCue::wake);
}

void PractiseCue::setTiming(const std::optional<SessionTiming>& timing)
{
    m_timing = timing;
    reset();
}

void PractiseCue::start()
{
    const auto cue = moment();
    if (!cue || cue->phase == CuePhase::over || m_clock.isRunning()) {
        return;
    }
    m_begun = true;
    m_clock.start(m_now());
    wake();
}

void PractiseCue::pause()
{
    m_clock.pause(m_now());
    m_timer.stop();
    emit ticked();
}

void PractiseCue::reset()
{
    m_clock.reset();
    m_timer.stop();
    m_begun = false;
    m_told.reset();
    emit ticked();
}

Milliseconds PractiseCue::elapsed() const
{
    return m_clock.elapsed(m_now());
}

std::optional<CueMoment> PractiseCue::moment() const
{
    return m_timing ? std::optional(cueAt(*m_timing, elapsed())) : std::nullopt;
}

void PractiseCue::wake()
{
    const auto cue = moment();
    if (!cue) {
        return;
    }
    if (m_told != cue->phase || m_toldContraction != cue->contraction) {
        m_told = cue->phase;
        m_toldContraction = cue->contraction;
        emit phaseChanged(cue->phase);
    }
    if (cue->phase == CuePhase::over) {
        m_clock.pause(m_now());
    } else {
        waitForNext();
    }
    emit ticked();
}

void PractiseCue::waitForNext()
{
    if (!m_clock.isRunning()) {
        return;
    }
    // From the start of the session, so that no lateness of a timer adds up.
    const Milliseconds at = elapsed();
    const Milliseconds change = nextCueChange(*m_timing, at).value_or(at);
    const Milliseconds next = std::min((at / tick + 1) * tick, change);
    m_timer.start(std::max(next - at, Milliseconds(0)));
}

} // namespace quadrille::app
