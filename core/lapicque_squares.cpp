// SPDX-License-Identifier: GPL-3.0-or-later
// For each rate k = 1 / tau the best rheobase follows by linear least squares, so that one unknown
// is left (variable projection; Golub and Pereyra, SIAM J Numer Anal 1973;10:413, from memory). In
// place of 1 / (1 - exp(-k d)) stands k / (1 - exp(-k d)): the same curve up to its factor, but
// finite as k goes to 0.
#include "core/lapicque_squares.h"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numeric>

namespace quadrille
{

namespace
{

using Values = std::vector<double>;

double productOf(const Values& a, const Values& b)
{
    return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

double normOf(const Values& values)
{
    return std::sqrt(productOf(values, values));
}

class LapicqueSquares
{
public:
    LapicqueSquares(const Values& durations, const Values& thresholds)
        : m_durations(durations)
        , m_thresholds(thresholds)
        , m_shortest(*std::ranges::min_element(durations))
        , m_longest(*std::ranges::max_element(durations))
    {
    }

    /// The rate with the least squares, or nothing when they have no minimum.
    std::optional<double> bestRate() const
    {
        // Beyond these rates the curve is 1/d, or flat, to the last bit of what can be measured.
        const double first = std::log(1e-7 / m_longest);
        const double last = std::log(40.0 / m_shortest);
        constexpr double step = 0.1; // so small that the curve changes little from one to the next
        std::optional<double> best;
        double before = slopeAt(first);
        for (double low = first; low < last; low += step) {
            const double after = slopeAt(low + step);
            if (before < 0.0 && after >= 0.0) {
                const double rate = minimumBetween(low, low + step);
                if (!best || leftAt(rate) < leftAt(*best)) {
                    best = rate;
                }
            }
            before = after;
        }
        // What rounding makes of a flat stretch is no minimum.
        constexpr double rounding = 1e-12;
        if (best && leftAtTheEnds() - leftAt(*best) <= rounding * normOf(m_thresholds)) {
            return std::nullopt;
        }
        return best;
    }

    double factorAt(double rate) const { return factorOf(curveAt(rate)); }

private:
    Values curveAt(double rate) const
    {
        Values curve;
        for (const double duration : m_durations) {
            curve.push_back(rate / -std::expm1(-rate * duration));
        }
        return curve;
    }

    double factorOf(const Values& curve) const
    {
        return productOf(curve, m_thresholds) / productOf(curve, curve);
    }

    /// What the curve with its best factor leaves of the thresholds.
    Values residualsOf(const Values& curve) const
    {
        const double factor = factorOf(curve);
        Values residuals;
        for (std::size_t i = 0; i < curve.size(); ++i) {
            residuals.push_back(m_thresholds[i] - factor * curve[i]);
        }
        return residuals;
    }

    /// Has the sign of the squares' derivative by the rate, which is -2 factor (residuals · curve')
    /// with curve' = curve (1 - w) / rate and w = k d / (exp(k d) - 1). The residuals are
    /// orthogonal to the curve, so any constant may stand for the 1; the w of the longest duration
    /// keeps the digits both where all w are near 1 and where all are near 0.
    double slopeAt(double logarithmOfRate) const
    {
        const double rate = std::exp(logarithmOfRate);
        const auto weight = [rate](double duration) {
            return rate * duration / std::expm1(rate * duration);
        };
        const Values curve = curveAt(rate);
        const Values residuals = residualsOf(curve);
        const double constant = weight(m_longest);
        double slope = 0.0;
        for (std::size_t i = 0; i < curve.size(); ++i) {
            slope += residuals[i] * curve[i] * (weight(m_durations[i]) - constant);
        }
        return slope;
    }

    double leftAt(double rate) const { return normOf(residualsOf(curveAt(rate))); }

    /// What is left where tau grows without end (the curve is 1/d) or shrinks to 0 (it is flat).
    double leftAtTheEnds() const
    {
        Values steepest;
        for (const double duration : m_durations) {
            steepest.push_back(1.0 / duration);
        }
        const Values flat(m_durations.size(), 1.0);
        return std::min(normOf(residualsOf(steepest)), normOf(residualsOf(flat)));
    }

    double minimumBetween(double low, double high) const
    {
        const auto slope = [this](double logarithmOfRate) { return slopeAt(logarithmOfRate); };
        std::uintmax_t steps = 200;
        const auto [left, right] = boost::math::tools::toms748_solve(
            slope, low, high, boost::math::tools::eps_tolerance<double>(), steps);
        return std::exp(left + (right - left) / 2.0);
    }

    const Values& m_durations;
    const Values& m_thresholds;
    double m_shortest;
    double m_longest;
};

} // namespace

std::optional<LapicqueConstants> leastLapicqueSquares(const std::vector<double>& durations,
                                                      const std::vector<double>& thresholds)
{
    const LapicqueSquares squares(durations, thresholds);
    const std::optional<double> rate = squares.bestRate();
    if (!rate) {
        return std::nullopt;
    }
    return LapicqueConstants{squares.factorAt(*rate) * *rate, 1.0 / *rate};
}

} // namespace quadrille
