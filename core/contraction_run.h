// SPDX-License-Identifier: GPL-3.0-or-later
// The force–fatigue model over one cycle of a session: the pulses of a contraction and the rest
// after it.
#pragma once

#include "core/force_fatigue_model.h"
#include "core/force_peak.h"

#include <cstdint>
#include <vector>

namespace quadrille
{

/// The pulses of one contraction and how long it is followed until the next begins. Times in ms.
struct PulseTrain {
    double period = 0.0;     ///< from pulse to pulse
    std::int64_t pulses = 0; ///< ≥ 1
    double window = 0.0;     ///< from the first pulse to the next contraction, or to the end
    double onPhase = 0.0;    ///< where the ramp down ends, also for a contraction that is cut
    double rampUp = 0.0;
    double rampDown = 0.0;
    double recruitedShare = 1.0; ///< at full ramp, 0 … 1

    /// Share of a pulse at `time` after the first one, recruitedShare at most. The first pulse of
    /// an up-ramp recruits nothing.
    double shareAt(double time) const;
    /// From the last pulse to the end of the window.
    double rest() const { return window - static_cast<double>(pulses - 1) * period; }
};

/// Steps of dyadic fractions of one length, so that steps of any size end on it exactly.
class StepLadder
{
public:
    static constexpr unsigned levels = 10;
    StepLadder() = default;
    StepLadder(double top, double activationTime);
    double top() const { return m_top; }
    /// Level 0 is the whole length, each further one half of the level before; 0 … levels.
    const StepTable& step(unsigned level) const { return m_steps[level]; }

private:
    double m_top = 0.0;
    std::array<StepTable, levels + 1> m_steps;
};

/// What one contraction gave: the highest force in its window, N, and the integral over it, N ms.
template <class Number>
struct ContractionForces {
    Number peak{};
    Number impulse{};
};

/// Integrates cycle after cycle of one pulse train. Relative error of each cycle about 1e-9; no
/// memory is taken while it runs. `Number` is double or Lanes.
template <class Number>
class ContractionRun
{
public:
    ContractionRun(const PulseTrain& train, const FatigueParameters& parameters);

    /// One cycle from the first pulse on. `memory` is exp(−t/activation time) with t since the
    /// pulse before; 0 for the first pulse of a session.
    ContractionForces<Number> run(Muscle<Number>& muscle, double memory);
    /// The same for this window's next cycle: memory of the last pulse at the end of the window.
    double memoryAfter() const;

    /// `watch` is called at every pulse and after every step with the time since the first pulse,
    /// ms, the muscle and its dF/dt.
    template <class Watch>
    ContractionForces<Number> run(Muscle<Number>& muscle, double memory, Watch&& watch);

private:
    void addPulse(Muscle<Number>& muscle, double memory);
    template <class Watch>
    void pass(Muscle<Number>& muscle, const StepLadder& ladder, double length, Watch&& watch);
    void stepOn(Muscle<Number>& muscle, const StepTable& step);
    void relaxInClosedForm(Muscle<Number>& muscle, double length);
    bool isRelaxed(const Muscle<Number>& muscle) const;
    unsigned levelFor(const StepLadder& ladder) const;

    PulseTrain m_train;
    const FatigueParameters& m_parameters;
    ForceEquations<Number> m_equations;
    StepLadder m_betweenPulses;
    StepLadder m_atRest;
    Number m_slope{};
    Number m_peak{};
    double m_elapsed = 0.0;
    /// Activation and pulse sum of a muscle at rest, which is the quickest to react: they choose
    /// the steps for all lanes.
    double m_restedActivation = 0.0;
    double m_restedPulseSum = 0.0;
};

} // namespace quadrille
