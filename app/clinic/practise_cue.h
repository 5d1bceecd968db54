// SPDX-License-Identifier: GPL-3.0-or-later
// The running cue: a clock that can be paused, and a timer that wakes at each change of phase.
#pragma once

#include "core/work_rest_cue.h"

#include <QObject>
#include <QTimer>

#include <functional>
#include <optional>

namespace quadrille::app
{

class PractiseCue : public QObject
{
    Q_OBJECT

public:
    using SteadyTime = std::function<Milliseconds()>;

    /// `now`: a clock that never goes back. Stands until start().
    PractiseCue(SteadyTime now, QObject* parent = nullptr);

    /// The rhythm to practise, from its beginning; nothing leaves the cue empty.
    void setTiming(const std::optional<SessionTiming>& timing);
    const std::optional<SessionTiming>& timing() const { return m_timing; }
    void start();
    void pause();
    void reset();
    bool isRunning() const { return m_clock.isRunning(); }
    /// True once it was started, until reset().
    bool hasBegun() const { return m_begun; }
    Milliseconds elapsed() const;
    /// The cue now; nothing without a rhythm.
    std::optional<CueMoment> moment() const;

signals:
    /// Another phase runs, also the first after a start.
    void phaseChanged(quadrille::CuePhase phase);
    /// Something that is shown may have changed: at least ten times a second while it runs.
    void ticked();

private:
    void wake();
    void waitForNext();

    SteadyTime m_now;
    std::optional<SessionTiming> m_timing;
    PractiseClock m_clock;
    QTimer m_timer;
    bool m_begun = false;
    std::optional<CuePhase> m_told; ///< the phase announced last
    std::int64_t m_toldContraction = 0;
};

} // namespace quadrille::app
