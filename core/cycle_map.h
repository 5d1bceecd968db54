// SPDX-License-Identifier: GPL-3.0-or-later
// What one cycle makes of the fatigue at its start. After a rest that lets force and activation die
// away, the impulse not yet recovered is all that the muscle remembers; so a long session is a
// sequence of one number, and the map from one cycle to the next is smooth.
#pragma once

#include "core/contraction_run.h"

#include <optional>
#include <vector>

namespace quadrille
{

/// The map P at the start of a cycle → P at its end, as a polynomial through Chebyshev points over
/// every P from rest to a muscle without force.
class CycleMap
{
public:
    /// Nothing where a cycle ends with more force than `mostForceLeft` of its peak (the rest is too
    /// short for the muscle to forget), or where the polynomial's last coefficients show an error
    /// above 5e-10 of the range.
    static std::optional<CycleMap> of(const PulseTrain& train, const FatigueParameters& parameters);

    /// P after a cycle that starts with `unrecoveredImpulse`, N ms.
    double after(double unrecoveredImpulse) const;
    /// From zero to here the map holds, N ms.
    double most() const { return m_most; }

    /// Share of the peak force that may be left at the end of a cycle.
    static constexpr double mostForceLeft = 1e-10;

private:
    bool fill(std::size_t count, const PulseTrain& train, const FatigueParameters& parameters);

    double m_most = 0.0;
    std::vector<double> m_points; ///< P at the nodes
    std::vector<double> m_values; ///< P a cycle later
};

} // namespace quadrille
