// SPDX-License-Identifier: GPL-3.0-or-later
// The body of ContractionRun, for the two numbers it is made for and for watchers.
#pragma once

#include "core/contraction_run.h"

#include <algorithm>
#include <cmath>

namespace quadrille
{

namespace contraction_steps
{
/// Longest step while the activation is at work, ms.
inline constexpr double longest = 8.0;
/// Longest step once the activation has died away and the force only decays, ms.
inline constexpr double longestAtRest = 40.0;
/// Below this activation the steps are those of a muscle at rest.
inline constexpr double activationAtRest = 1e-5;
/// Activation and force (as a share of the peak) below which rest is taken in closed form.
inline constexpr double activationGone = 1e-12;
inline constexpr double forceGone = 1e-7;
/// Share of the distance to the nearest singularity of x = CN/(Km + CN), about (Km + CN)/CN', that
/// one step may span.
inline constexpr double shareOfDistance = 0.25;
} // namespace contraction_steps

/// Force `at` ms after the start of a step of `length` ms, from force and slope at both ends
/// (cubic; for drawing). A step longer than the longest was taken in closed form: force only dies
/// away there, and is nothing.
inline double forceBetween(const ForceAt<double>& start, const ForceAt<double>& end, double length,
                           double at)
{
    // Lengths are differences of sums, so a whole step may come out a little longer.
    if (length > 1.001 * contraction_steps::longestAtRest || length <= 0.0) {
        return at >= length ? end.force : 0.0;
    }
    const double s = at / length;
    const double rise = end.force - start.force;
    const double d0 = start.slope * length;
    const double d1 = end.slope * length;
    return start.force + s * (d0 + s * (3.0 * rise - 2.0 * d0 - d1 + s * (d0 + d1 - 2.0 * rise)));
}

template <class Number>
ContractionRun<Number>::ContractionRun(const PulseTrain& train, const FatigueParameters& parameters)
    : m_train(train)
    , m_parameters(parameters)
    , m_equations(parameters)
    , m_betweenPulses(train.period, parameters.activationTime)
    , m_atRest(contraction_steps::longestAtRest, parameters.activationTime)
{
}

template <class Number>
double ContractionRun<Number>::memoryAfter() const
{
    return std::exp(-m_train.rest() / m_parameters.activationTime);
}

template <class Number>
ContractionForces<Number> ContractionRun<Number>::run(Muscle<Number>& muscle, double memory)
{
    return run(muscle, memory, [](double, const Muscle<Number>&, const Number&) {});
}

template <class Number>
template <class Watch>
ContractionForces<Number> ContractionRun<Number>::run(Muscle<Number>& muscle, double memory,
                                                      Watch&& watch)
{
    m_peak = muscle.force;
    m_elapsed = 0.0;
    muscle.impulse = Number{};
    m_restedActivation = largestOf(muscle.activation);
    m_restedPulseSum = largestOf(muscle.pulseSum);
    const double betweenPulses = std::exp(-m_train.period / m_parameters.activationTime);
    const bool shortPeriod = m_train.period <= contraction_steps::longestAtRest;
    for (std::int64_t pulse = 0; pulse < m_train.pulses; ++pulse) {
        const double time = static_cast<double>(pulse) * m_train.period;
        m_equations.setRecruitedShare(m_train.shareAt(time));
        addPulse(muscle, pulse == 0 ? memory : betweenPulses);
        m_slope = m_equations.slope(muscle.activation, muscle.force, muscle.unrecoveredImpulse);
        watch(time, muscle, m_slope);
        const bool last = pulse + 1 == m_train.pulses;
        const double length = last ? m_train.rest() : m_train.period;
        const StepLadder& ladder = last || !shortPeriod ? m_atRest : m_betweenPulses;
        m_elapsed = time;
        pass(muscle, ladder, length, watch);
    }
    return {m_peak, muscle.impulse};
}

template <class Number>
void ContractionRun<Number>::addPulse(Muscle<Number>& muscle, double memory)
{
    const Number afterPulse = m_equations.halfActivation(muscle.unrecoveredImpulse) +
                              (m_parameters.pulseAfterPulse - 1.0);
    muscle.pulseSum += 1.0 + memory * afterPulse;
    m_restedPulseSum +=
        1.0 + memory * (m_parameters.halfActivationAtRest + m_parameters.pulseAfterPulse - 1.0);
}

/// Steps of `ladder` from the last pulse over `length` ms. A step ends only where a longer one
/// could have ended, so that the end is met exactly.
template <class Number>
template <class Watch>
void ContractionRun<Number>::pass(Muscle<Number>& muscle, const StepLadder& ladder, double length,
                                  Watch&& watch)
{
    const double start = m_elapsed;
    const std::int64_t unitsInTop = std::int64_t{1} << StepLadder::levels;
    const double unit = ladder.top() / static_cast<double>(unitsInTop);
    const auto units = static_cast<std::int64_t>(length / unit * (1.0 + 1e-12));
    std::int64_t done = 0;
    while (done < units) {
        if (isRelaxed(muscle)) {
            relaxInClosedForm(muscle, length - static_cast<double>(done) * unit);
            m_elapsed = start + length;
            watch(m_elapsed, muscle, m_slope);
            return;
        }
        unsigned level = levelFor(ladder);
        while (done % (unitsInTop >> level) != 0 || done + (unitsInTop >> level) > units) {
            ++level;
        }
        stepOn(muscle, ladder.step(level));
        done += unitsInTop >> level;
        m_elapsed = start + static_cast<double>(done) * unit;
        watch(m_elapsed, muscle, m_slope);
    }
    const double left = length - static_cast<double>(units) * unit;
    if (left > 1e-9 * unit) {
        stepOn(muscle, StepTable(left, m_parameters.activationTime));
        m_elapsed = start + length;
        watch(m_elapsed, muscle, m_slope);
    }
}

template <class Number>
unsigned ContractionRun<Number>::levelFor(const StepLadder& ladder) const
{
    using namespace contraction_steps;
    double limit = longestAtRest;
    if (m_restedActivation > activationAtRest || m_restedPulseSum > activationAtRest) {
        const double change =
            std::abs(m_restedPulseSum - m_restedActivation) / m_parameters.activationTime;
        const double distance =
            (m_parameters.halfActivationAtRest + m_restedActivation) / std::max(change, 1e-300);
        limit = std::min(longest, shareOfDistance * distance);
    }
    unsigned level = &ladder == &m_betweenPulses ? 1 : 0; // two a pulse show each crest
    while (level < StepLadder::levels && ladder.step(level).length > limit) {
        ++level;
    }
    return level;
}

template <class Number>
void ContractionRun<Number>::stepOn(Muscle<Number>& muscle, const StepTable& step)
{
    const Muscle<Number> before = muscle;
    const Number slopeBefore = m_slope;
    advance(muscle, m_slope, step, m_equations);
    m_restedActivation =
        step.decay.back() * m_restedActivation + step.rise.back() * m_restedPulseSum;
    m_restedPulseSum *= step.decay.back();
    const Number zero(0.0);
    m_peak = larger(m_peak, muscle.force);
    const Number reach =
        smaller(before.force + slopeBefore * step.length, muscle.force - m_slope * step.length);
    const Number promise = select(slopeBefore > zero, select(zero > m_slope, reach, zero), zero);
    if (!anyOf(promise > m_peak)) {
        return;
    }
    const Number top = peakBetween<Number>(
        {before.force, slopeBefore, m_equations.curvature(before, slopeBefore)},
        {muscle.force, m_slope, m_equations.curvature(muscle, m_slope)}, step.length);
    m_peak = larger(m_peak, select(promise > m_peak, top, zero));
}

template <class Number>
bool ContractionRun<Number>::isRelaxed(const Muscle<Number>& muscle) const
{
    using namespace contraction_steps;
    return m_restedActivation < activationGone && m_restedPulseSum < activationGone &&
           !anyOf(muscle.force > forceGone * m_peak);
}

/// F decays with the relaxation time it has now, P with the recovery time.
template <class Number>
void ContractionRun<Number>::relaxInClosedForm(Muscle<Number>& muscle, double length)
{
    const Number relaxation = m_equations.relaxationTime(muscle.unrecoveredImpulse);
    const Number forceDecay = exponential(-length / relaxation);
    const double recovery = std::exp(-length / m_parameters.recoveryTime);
    muscle.impulse += muscle.force * relaxation * (1.0 - forceDecay);
    muscle.unrecoveredImpulse = muscle.unrecoveredImpulse * recovery +
                                muscle.force * (recovery - forceDecay) /
                                    (1.0 / relaxation - 1.0 / m_parameters.recoveryTime);
    muscle.force *= forceDecay;
    const double gone = std::exp(-length / m_parameters.activationTime);
    muscle.activation =
        gone * (muscle.activation + muscle.pulseSum * (length / m_parameters.activationTime));
    muscle.pulseSum *= gone;
    m_restedActivation = 0.0;
    m_restedPulseSum = 0.0;
}

} // namespace quadrille
