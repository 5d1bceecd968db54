// SPDX-License-Identifier: GPL-3.0-or-later
// The equations of the force–fatigue model, as short steps between pulses.
//
//   d CN/dt = (1/tc) Σ R exp(−(t − ti)/tc) − CN/tc           activation
//   d F/dt  = rho A x − F/(t1 + t2 x),   x = CN/(Km + CN)     force
//   d A/dt  = −(A − A rest)/tfat + alphaA F, and Km, t1 alike  fatigue
//
// Ding, Wexler, Binder-Macleod, J Appl Physiol 2000;88:917 (equations), as restated in Marion,
// Wexler, Hull, J NeuroEng Rehabil 2013;10:13.
//
// A, Km and t1 differ from rest by one and the same quantity times their alpha: the impulse of
// force that is not yet recovered, dP/dt = F − P/tfat. So the state is CN (closed form between
// pulses), F and P.
#pragma once

#include "core/fatigue_parameters.h"
#include "core/lanes.h"

#include <array>
#include <cstddef>

namespace quadrille
{

/// The muscle at one moment. `Number` is double, or Lanes for several muscles under one pulse
/// train.
template <class Number>
struct Muscle {
    Number pulseSum{};           ///< Σ R exp(−(t − ti)/tc)
    Number activation{};         ///< CN
    Number force{};              ///< N
    Number unrecoveredImpulse{}; ///< P, N ms
    Number impulse{};            ///< ∫ F dt since it was last set to zero, N ms
};

/// Coefficients of the explicit method of order 5 by Dormand and Prince, J Comput Appl Math
/// 1980;6:19.
namespace dormand_prince
{
inline constexpr std::size_t stages = 6;
inline constexpr std::array<double, stages> nodes{0.0, 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1.0};
inline constexpr double a[stages][stages]{
    {},
    {1.0 / 5},
    {3.0 / 40, 9.0 / 40},
    {44.0 / 45, -56.0 / 15, 32.0 / 9},
    {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
    {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656}};
inline constexpr std::array<double, stages> b{35.0 / 384,     0.0,      500.0 / 1113, 125.0 / 192,
                                              -2187.0 / 6784, 11.0 / 84};
} // namespace dormand_prince

/// How pulse sum and activation develop at the nodes of a step of one length:
/// CN(u) = (CN + S u/tc) exp(−u/tc), S(u) = S exp(−u/tc).
struct StepTable {
    double length = 0.0; ///< ms
    std::array<double, dormand_prince::stages> decay{};
    std::array<double, dormand_prince::stages> rise{};

    StepTable() = default;
    StepTable(double span, double activationTime);
};

/// dF/dt = drive − decay · F, at one moment.
template <class Number>
struct LinearForce {
    Number drive{}; ///< N/ms
    Number decay{}; ///< 1/ms
};

/// The derivatives of the model for one set of parameters and one recruited share.
template <class Number>
class ForceEquations
{
public:
    explicit ForceEquations(const FatigueParameters& parameters)
        : m_p(parameters)
    {
    }
    /// The share of the muscle that the current pulse recruits, 0 … 1.
    void setRecruitedShare(double share) { m_share = share; }

    Number halfActivation(const Number& unrecovered) const
    {
        return m_p.halfActivationAtRest + m_p.halfActivationPerImpulse * unrecovered;
    }
    Number relaxationTime(const Number& unrecovered) const
    {
        return m_p.relaxationTimeAtRest + m_p.relaxationPerImpulse * unrecovered;
    }
    Number forceScale(const Number& unrecovered) const
    {
        return m_p.forceScaleAtRest + m_p.forceScalePerImpulse * unrecovered;
    }

    /// dF/dt, N/ms.
    Number slope(const Number& activation, const Number& force, const Number& unrecovered) const
    {
        const LinearForce<Number> now = linear(activation, unrecovered);
        return now.drive - now.decay * force;
    }
    /// The force equation for given activation and P. One division for both fractions: with
    /// D = Km + CN and Q = t1 D + t2 CN, x = CN/D and 1/(t1 + t2 x) = D/Q.
    LinearForce<Number> linear(const Number& activation, const Number& unrecovered) const
    {
        const Number d = halfActivation(unrecovered) + activation;
        const Number q = relaxationTime(unrecovered) * d + m_p.crossBridgeTime * activation;
        const Number inverse = 1.0 / (d * q);
        return {m_share * forceScale(unrecovered) * activation * q * inverse, d * d * inverse};
    }
    /// P after a step of `length` in which the force had the integral `impulse`: half of the
    /// recovery before it, half after (error of order length³ / recovery time²).
    void recover(Number& unrecovered, const Number& impulse, double length) const
    {
        const double share = 0.5 * length / m_p.recoveryTime;
        unrecovered = (unrecovered * (1.0 - share) + impulse) * (1.0 / (1.0 + share));
    }
    /// dP/dt, N.
    Number recovery(const Number& force, const Number& unrecovered) const
    {
        return force - unrecovered * (1.0 / m_p.recoveryTime);
    }
    /// d²F/dt², N/ms², with dF/dt given.
    Number curvature(const Muscle<Number>& muscle, const Number& slope) const;

private:
    const FatigueParameters& m_p;
    double m_share = 1.0;
};

template <class Number>
Number ForceEquations<Number>::curvature(const Muscle<Number>& muscle, const Number& slope) const
{
    const Number km = halfActivation(muscle.unrecoveredImpulse);
    const Number& cn = muscle.activation;
    const Number inverseD = 1.0 / (km + cn);
    const Number x = cn * inverseD;
    const Number k = 1.0 / (relaxationTime(muscle.unrecoveredImpulse) + m_p.crossBridgeTime * x);
    const Number unrecoveredSlope = recovery(muscle.force, muscle.unrecoveredImpulse);
    const Number cnSlope = (muscle.pulseSum - cn) * (1.0 / m_p.activationTime);
    const Number kmSlope = m_p.halfActivationPerImpulse * unrecoveredSlope;
    const Number xSlope = (km * cnSlope - cn * kmSlope) * inverseD * inverseD;
    const Number kSlope =
        -k * k * (m_p.relaxationPerImpulse * unrecoveredSlope + m_p.crossBridgeTime * xSlope);
    return m_share * (m_p.forceScalePerImpulse * unrecoveredSlope * x +
                      forceScale(muscle.unrecoveredImpulse) * xSlope) -
           kSlope * muscle.force - k * slope;
}

/// One step of the method of Dormand and Prince. `slope` is dF/dt at its start and becomes dF/dt at
/// its end. Given P, the force equation is linear in F; P moves so slowly that its Taylor
/// polynomial of degree 2 serves inside a step (what it leaves is of order length³ · F'' · alpha,
/// below 1e-7 of A for steps up to 10 ms), so all fractions are known before the first stage.
template <class Number>
void advance(Muscle<Number>& muscle, Number& slope, const StepTable& step,
             const ForceEquations<Number>& equations)
{
    using namespace dormand_prince;
    std::array<Number, stages> forces;
    std::array<Number, stages> slopes;
    LinearForce<Number> linear;
    const double h = step.length;
    const Number recovery = equations.recovery(muscle.force, muscle.unrecoveredImpulse);
    const Number recoverySlope = 0.5 * equations.recovery(slope, recovery);
    forces[0] = muscle.force;
    slopes[0] = slope;
#pragma GCC unroll 6
    for (std::size_t i = 1; i < stages; ++i) {
        const double u = h * nodes[i];
        const Number unrecovered = muscle.unrecoveredImpulse + u * (recovery + u * recoverySlope);
        const Number activation =
            step.decay[i] * muscle.activation + step.rise[i] * muscle.pulseSum;
        linear = equations.linear(activation, unrecovered);
        Number force = (h * a[i][0]) * slopes[0];
#pragma GCC unroll 6
        for (std::size_t j = 1; j < i; ++j) {
            force += (h * a[i][j]) * slopes[j];
        }
        forces[i] = muscle.force + force;
        slopes[i] = linear.drive - linear.decay * forces[i];
    }
    Number mean = b[0] * forces[0];
    Number rise = b[0] * slopes[0];
#pragma GCC unroll 6
    for (std::size_t i = 2; i < stages; ++i) {
        mean += b[i] * forces[i];
        rise += b[i] * slopes[i];
    }
    equations.recover(muscle.unrecoveredImpulse, h * mean, h);
    muscle.impulse += h * mean;
    muscle.force += h * rise;
    muscle.activation = step.decay.back() * muscle.activation + step.rise.back() * muscle.pulseSum;
    muscle.pulseSum *= step.decay.back();
    slope = linear.drive - linear.decay * muscle.force;
}

} // namespace quadrille
