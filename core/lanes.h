// SPDX-License-Identifier: GPL-3.0-or-later
// Several numbers that go through the same arithmetic side by side. The model is written once, for
// double and for Lanes; every operation acts in each lane by itself.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <cstdint>

namespace quadrille
{

/// Two doubles, the width that every 64-bit processor computes with at once; the compilers' vector
/// extension.
using LanePair = double __attribute__((vector_size(2 * sizeof(double))));
using LanePairMask = std::int64_t __attribute__((vector_size(2 * sizeof(std::int64_t))));

inline constexpr std::size_t lanePairs = 2;
inline constexpr std::size_t laneCount = 2 * lanePairs;

/// What a comparison of lanes gives.
struct LaneMask {
    std::array<LanePairMask, lanePairs> pairs;
};

struct Lanes {
    std::array<LanePair, lanePairs> pairs{};

    Lanes() = default;
    /// The same number in every lane; implicit, as a constant in a formula means just that.
    Lanes(double value)
    {
        for (LanePair& pair : pairs) {
            pair = LanePair{value, value};
        }
    }
    double lane(std::size_t index) const { return pairs[index / 2][index % 2]; }
    void setLane(std::size_t index, double value) { pairs[index / 2][index % 2] = value; }

#define QUADRILLE_LANES_OPERATOR(op)                                                               \
    friend Lanes operator op(const Lanes& a, const Lanes& b)                                       \
    {                                                                                              \
        Lanes result;                                                                              \
        for (std::size_t i = 0; i < lanePairs; ++i) {                                              \
            result.pairs[i] = a.pairs[i] op b.pairs[i];                                            \
        }                                                                                          \
        return result;                                                                             \
    }                                                                                              \
    Lanes& operator op##=(const Lanes& other)                                                      \
    {                                                                                              \
        return *this = *this op other;                                                             \
    }
    QUADRILLE_LANES_OPERATOR(+)
    QUADRILLE_LANES_OPERATOR(-)
    QUADRILLE_LANES_OPERATOR(*)
    QUADRILLE_LANES_OPERATOR(/)
#undef QUADRILLE_LANES_OPERATOR
    friend Lanes operator-(const Lanes& a)
    {
        return Lanes(0.0) - a;
    }
    friend LaneMask operator>(const Lanes& a, const Lanes& b)
    {
        LaneMask result;
        for (std::size_t i = 0; i < lanePairs; ++i) {
            result.pairs[i] = a.pairs[i] > b.pairs[i];
        }
        return result;
    }
};

/// `a` where the comparison holds, `b` elsewhere.
inline double select(bool mask, double a, double b)
{
    return mask ? a : b;
}
inline Lanes select(const LaneMask& mask, const Lanes& a, const Lanes& b)
{
    Lanes result;
    for (std::size_t i = 0; i < lanePairs; ++i) {
        result.pairs[i] = mask.pairs[i] ? a.pairs[i] : b.pairs[i];
    }
    return result;
}

/// Whether a comparison holds in any lane.
inline bool anyOf(bool mask)
{
    return mask;
}
inline bool anyOf(const LaneMask& mask)
{
    LanePairMask any = mask.pairs[0];
    for (std::size_t i = 1; i < lanePairs; ++i) {
        any |= mask.pairs[i];
    }
    return (any[0] | any[1]) != 0;
}

inline double larger(double a, double b)
{
    return a > b ? a : b;
}
inline Lanes larger(const Lanes& a, const Lanes& b)
{
    return select(a > b, a, b);
}
inline double smaller(double a, double b)
{
    return a > b ? b : a;
}
inline Lanes smaller(const Lanes& a, const Lanes& b)
{
    return select(a > b, b, a);
}

/// The largest of the lanes.
inline double largestOf(double value)
{
    return value;
}
inline double largestOf(const Lanes& lanes)
{
    double largest = lanes.lane(0);
    for (std::size_t i = 1; i < laneCount; ++i) {
        largest = std::max(largest, lanes.lane(i));
    }
    return largest;
}

/// exp of every lane.
inline double exponential(double value)
{
    return std::exp(value);
}
inline Lanes exponential(const Lanes& lanes)
{
    Lanes result;
    for (std::size_t i = 0; i < laneCount; ++i) {
        result.setLane(i, std::exp(lanes.lane(i)));
    }
    return result;
}

} // namespace quadrille
