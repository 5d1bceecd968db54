// SPDX-License-Identifier: GPL-3.0-or-later
// A session as the force–fatigue model runs it: which cycles, from which state, and how many of
// them have to be integrated at all.
#pragma once

#include "core/contraction_run.h"
#include "core/cycle_map.h"
#include "core/session_timing.h"

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

namespace quadrille
{

/// A muscle at the start of a contraction and how much of the last pulse it remembers.
struct ContractionStart {
    Muscle<double> muscle;
    double memory = 0.0; ///< see ContractionRun::run; 0 before the first contraction
};

/// The first three and the last three whole contractions of a session, its end.
struct SessionForces {
    std::int64_t contractions = 0; ///< whole ones; the arrays hold min(3, contractions)
    std::array<ContractionForces<double>, 3> firstThree{};
    std::array<ContractionForces<double>, 3> lastThree{}; ///< in turn; the last one at the end
    double unrecoveredImpulseAtEnd = 0.0;                 ///< N ms
};

/// Runs sessions of one timing. Where the muscle forgets each contraction during the rest, a
/// polynomial carries the fatigue from cycle to cycle (CycleMap), and only the contractions that
/// are asked for are integrated. Elsewhere each cycle is integrated until cycles repeat themselves:
/// the rest of the change is at most d · q/(1 − q), with d the last change and q = exp(−cycle /
/// recovery time), because force falls as the unrecovered impulse grows; below 1e-10 they are taken
/// as equal.
class ModelSession
{
public:
    /// `frequency` > 0; `recruitedShare` 0 … 1; `parameters` outlive the object.
    ModelSession(const SessionTiming& timing, PulseFrequency frequency, double recruitedShare,
                 const FatigueParameters& parameters);

    SessionForces forces() const;
    /// Every whole contraction in turn.
    std::vector<ContractionForces<double>> eachContraction() const;
    /// The muscle as contraction `index` (from 0) begins; 0 ≤ index ≤ contractions started.
    ContractionStart startOf(std::int64_t index) const;
    /// Hands the force, N, every `interval` from `from` up to and with `until` to `take`.
    void sampleForce(Milliseconds from, Milliseconds until, Milliseconds interval,
                     const std::function<void(Milliseconds, double)>& take) const;
    /// The pulses of a whole contraction and its window of one cycle.
    const PulseTrain& train() const { return m_train; }

private:
    SessionForces forcesByMap() const;
    SessionForces forcesByTurns() const;
    double impulseAtEnd(const ContractionStart& lastStart) const;

    SessionTiming m_timing;
    const FatigueParameters& m_parameters;
    PulseTrain m_train;
    std::optional<PulseTrain> m_cut;
    std::optional<CycleMap> m_map;
};

} // namespace quadrille
