// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model_session.h"

#include "core/contraction_run_body.h"

#include <algorithm>
#include <cmath>

namespace quadrille
{

namespace
{

/// Below so many contractions integrating each costs less than the polynomial.
constexpr std::int64_t fewContractions = 6;
constexpr double settled = 1e-10;

double milliseconds(Milliseconds time)
{
    return static_cast<double>(time.count());
}

PulseTrain trainOf(const SessionTiming& timing, PulseFrequency frequency, double recruitedShare)
{
    PulseTrain train;
    train.period = 1e6 / static_cast<double>(frequency.count());
    train.pulses = timing.pulsesPerContraction;
    train.window = milliseconds(timing.cycle);
    train.onPhase = milliseconds(timing.onPhase);
    train.rampUp = milliseconds(timing.rampUp);
    train.rampDown = milliseconds(timing.rampDown);
    train.recruitedShare = recruitedShare;
    return train;
}

/// How far two states of the muscle lie apart, each part against its own size.
double distance(const Muscle<double>& a, const Muscle<double>& b, double peak, double mostImpulse)
{
    const double force = std::abs(a.force - b.force) / std::max(peak, 1e-300);
    return std::max({force, std::abs(a.unrecoveredImpulse - b.unrecoveredImpulse) / mostImpulse,
                     std::abs(a.activation - b.activation), std::abs(a.pulseSum - b.pulseSum)});
}

/// Cycle after cycle; afterwards the muscle of each start is known.
class Turns
{
public:
    Turns(const PulseTrain& train, const FatigueParameters& parameters)
        : m_run(train, parameters)
        , m_mostImpulse(parameters.forceScaleAtRest / -parameters.forceScalePerImpulse)
    {
        const double q = std::exp(-train.window / parameters.recoveryTime);
        m_mostChange = settled * (1.0 - q) / q;
    }

    const ContractionStart& start() const { return m_start; }
    /// Integrates the contraction that begins at start(), which then is that of the next.
    const ContractionForces<double>& next()
    {
        if (m_isSettled) {
            return m_forces;
        }
        const Muscle<double> before = m_start.muscle;
        m_forces = m_run.run(m_start.muscle, m_start.memory);
        m_start.memory = m_run.memoryAfter();
        m_isSettled = distance(before, m_start.muscle, m_forces.peak, m_mostImpulse) < m_mostChange;
        return m_forces;
    }

private:
    ContractionRun<double> m_run;
    double m_mostImpulse;
    double m_mostChange = 0.0;
    ContractionStart m_start;
    ContractionForces<double> m_forces;
    bool m_isSettled = false;
};

ContractionStart startAt(double unrecoveredImpulse)
{
    ContractionStart start;
    start.muscle.unrecoveredImpulse = unrecoveredImpulse;
    return start;
}

/// Integrates the contractions that begin with `impulses`, several at a time.
std::vector<ContractionForces<double>> contractionsFrom(const std::vector<double>& impulses,
                                                        const PulseTrain& train,
                                                        const FatigueParameters& parameters)
{
    std::vector<ContractionForces<double>> all;
    all.reserve(impulses.size());
    ContractionRun<Lanes> run(train, parameters);
    for (std::size_t first = 0; first < impulses.size(); first += laneCount) {
        Muscle<Lanes> muscle;
        const std::size_t count = std::min(laneCount, impulses.size() - first);
        for (std::size_t lane = 0; lane < laneCount; ++lane) {
            muscle.unrecoveredImpulse.setLane(lane, impulses[first + std::min(lane, count - 1)]);
        }
        const ContractionForces<Lanes> forces = run.run(muscle, 0.0);
        for (std::size_t lane = 0; lane < count; ++lane) {
            all.push_back({forces.peak.lane(lane), forces.impulse.lane(lane)});
        }
    }
    return all;
}

} // namespace

ModelSession::ModelSession(const SessionTiming& timing, PulseFrequency frequency,
                           double recruitedShare, const FatigueParameters& parameters)
    : m_timing(timing)
    , m_parameters(parameters)
    , m_train(trainOf(timing, frequency, recruitedShare))
{
    if (timing.cutContraction > Milliseconds(0)) {
        m_cut = m_train;
        m_cut->pulses = pulsesIn(timing.cutContraction, frequency);
        m_cut->window = milliseconds(timing.cutContraction);
    }
    if (timing.contractionsCompleted > fewContractions) {
        m_map = CycleMap::of(m_train, parameters);
    }
}

SessionForces ModelSession::forces() const
{
    return m_map ? forcesByMap() : forcesByTurns();
}

SessionForces ModelSession::forcesByMap() const
{
    SessionForces result;
    const std::int64_t count = m_timing.contractionsCompleted;
    result.contractions = count;
    std::vector<double> starts;
    double impulse = 0.0;
    for (std::int64_t i = 0; i < count; ++i) {
        if (i < 3 || i >= count - 3) {
            starts.push_back(impulse);
        }
        impulse = m_map->after(impulse);
    }
    const auto forces = contractionsFrom(starts, m_train, m_parameters);
    std::copy_n(forces.begin(), 3, result.firstThree.begin());
    std::copy_n(forces.end() - 3, 3, result.lastThree.begin());
    const bool inWholeCycle = count > m_timing.cyclesComplete;
    result.unrecoveredImpulseAtEnd = impulseAtEnd(startAt(inWholeCycle ? starts.back() : impulse));
    return result;
}

SessionForces ModelSession::forcesByTurns() const
{
    SessionForces result;
    const std::int64_t count = m_timing.contractionsCompleted;
    result.contractions = count;
    Turns turns(m_train, m_parameters);
    ContractionStart lastStart;
    std::int64_t kept = 0;
    for (std::int64_t i = 0; i < count; ++i) {
        lastStart = turns.start();
        const ContractionForces<double>& forces = turns.next();
        if (i < 3) {
            result.firstThree[static_cast<std::size_t>(i)] = forces;
        }
        if (kept == 3) {
            std::rotate(result.lastThree.begin(), result.lastThree.begin() + 1,
                        result.lastThree.end());
            --kept;
        }
        result.lastThree[static_cast<std::size_t>(kept++)] = forces;
    }
    const bool inWholeCycle = count > m_timing.cyclesComplete;
    result.unrecoveredImpulseAtEnd = impulseAtEnd(inWholeCycle ? lastStart : turns.start());
    return result;
}

/// `lastStart`: the start of what is left after the complete cycles.
double ModelSession::impulseAtEnd(const ContractionStart& lastStart) const
{
    PulseTrain train = m_cut.value_or(m_train);
    if (m_timing.remainder == Milliseconds(0)) {
        return lastStart.muscle.unrecoveredImpulse;
    }
    train.window = milliseconds(m_timing.remainder);
    Muscle<double> muscle = lastStart.muscle;
    ContractionRun<double>(train, m_parameters).run(muscle, lastStart.memory);
    return muscle.unrecoveredImpulse;
}

std::vector<ContractionForces<double>> ModelSession::eachContraction() const
{
    const std::int64_t count = m_timing.contractionsCompleted;
    if (m_map) {
        std::vector<double> starts;
        double impulse = 0.0;
        for (std::int64_t i = 0; i < count; ++i) {
            starts.push_back(impulse);
            impulse = m_map->after(impulse);
        }
        return contractionsFrom(starts, m_train, m_parameters);
    }
    std::vector<ContractionForces<double>> all;
    Turns turns(m_train, m_parameters);
    for (std::int64_t i = 0; i < count; ++i) {
        all.push_back(turns.next());
    }
    return all;
}

ContractionStart ModelSession::startOf(std::int64_t index) const
{
    if (m_map) {
        double impulse = 0.0;
        for (std::int64_t i = 0; i < index; ++i) {
            impulse = m_map->after(impulse);
        }
        return startAt(impulse);
    }
    Turns turns(m_train, m_parameters);
    for (std::int64_t i = 0; i < index; ++i) {
        turns.next();
    }
    return turns.start();
}

void ModelSession::sampleForce(Milliseconds from, Milliseconds until, Milliseconds interval,
                               const std::function<void(Milliseconds, double)>& take) const
{
    std::int64_t index = from / m_timing.cycle;
    ContractionStart start = startOf(index);
    Milliseconds next = from;
    while (next <= until) {
        const Milliseconds cycleStart = index * m_timing.cycle;
        const bool isCut = m_cut && index == m_timing.contractionsCompleted;
        PulseTrain train = isCut ? *m_cut : m_train;
        train.window = m_train.window; // force dies away after the end too, but is not asked for
        ContractionRun<double> run(train, m_parameters);
        double before = 0.0;
        double forceBefore = start.muscle.force;
        double slopeBefore = 0.0;
        const auto watch = [&](double elapsed, const Muscle<double>& muscle, double slope) {
            while (next <= until && milliseconds(next - cycleStart) <= elapsed) {
                const ForceAt<double> left{forceBefore, slopeBefore, 0.0};
                const double at = milliseconds(next - cycleStart) - before;
                take(next, forceBetween(left, {muscle.force, slope, 0.0}, elapsed - before, at));
                next += interval;
            }
            before = elapsed;
            forceBefore = muscle.force;
            slopeBefore = slope;
        };
        run.run(start.muscle, start.memory, watch);
        start.memory = run.memoryAfter();
        ++index;
    }
}

} // namespace quadrille
