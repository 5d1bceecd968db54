// SPDX-License-Identifier: GPL-3.0-or-later
// The highest force inside a step, which usually lies between two pulses: sampling at pulses or at
// ends of steps misses it by 1e-5 to 1e-4.
#pragma once

#include "core/lanes.h"

namespace quadrille
{

/// Force at one end of a step with its first two derivatives by time (ms).
template <class Number>
struct ForceAt {
    Number force{};
    Number slope{};
    Number curvature{};
};

/// The maximum of the polynomial of degree 5 that has force, slope and curvature of both ends,
/// `length` ms apart. Meant for steps in which the force rises first and falls then; elsewhere the
/// result lies on the polynomial, so never above its maximum. Error of order length⁶.
template <class Number>
Number peakBetween(const ForceAt<Number>& start, const ForceAt<Number>& end, double length)
{
    const Number d0 = start.slope * length;
    const Number d1 = end.slope * length;
    const Number c0 = start.curvature * (length * length);
    const Number c1 = end.curvature * (length * length);
    const Number rise = end.force - start.force;
    const Number p2 = 0.5 * c0;
    const Number p3 = 10.0 * rise - 6.0 * d0 - 4.0 * d1 - 1.5 * c0 + 0.5 * c1;
    const Number p4 = -15.0 * rise + 8.0 * d0 + 7.0 * d1 + 1.5 * c0 - c1;
    const Number p5 = 6.0 * rise - 3.0 * (d0 + d1) - 0.5 * (c0 - c1);
    const Number zero(0.0);
    const Number one(1.0);
    const Number span = d0 - d1;
    Number s = smaller(larger(d0 / select(span > zero, span, one), zero), one);
    for (int i = 0; i < 4; ++i) {
        const Number first = d0 + s * (2.0 * p2 + s * (3.0 * p3 + s * (4.0 * p4 + s * 5.0 * p5)));
        const Number second = 2.0 * p2 + s * (6.0 * p3 + s * (12.0 * p4 + s * 20.0 * p5));
        s -= select(zero > second, first / second, zero);
        s = smaller(larger(s, zero), one);
    }
    return start.force + s * (d0 + s * (p2 + s * (p3 + s * (p4 + s * p5))));
}

} // namespace quadrille
