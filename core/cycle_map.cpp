// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cycle_map.h"

#include "core/contraction_run_body.h"

#include <array>
#include <cmath>
#include <numbers>

namespace quadrille
{

namespace
{

constexpr std::array<std::size_t, 2> nodeCounts{12, 24}; // whole bundles of lanes
constexpr double mostError = 5e-10;

/// The two last coefficients of the Chebyshev series through `values`, which stand for those left
/// away: Trefethen, Approximation Theory and Approximation Practice, 2013, chapter 8.
double truncationError(const std::vector<double>& values)
{
    const std::size_t last = values.size() - 1;
    double error = 0.0;
    for (const std::size_t k : {last - 1, last}) {
        double sum = 0.0;
        for (std::size_t j = 0; j <= last; ++j) {
            const double weight = j == 0 || j == last ? 0.5 : 1.0;
            sum +=
                weight * values[j] *
                std::cos(std::numbers::pi * static_cast<double>(k * j) / static_cast<double>(last));
        }
        error += std::abs(sum) * 2.0 / static_cast<double>(last);
    }
    return error;
}

} // namespace

std::optional<CycleMap> CycleMap::of(const PulseTrain& train, const FatigueParameters& parameters)
{
    for (const std::size_t count : nodeCounts) {
        CycleMap map;
        map.m_most = parameters.forceScaleAtRest / -parameters.forceScalePerImpulse;
        if (!map.fill(count, train, parameters)) {
            return std::nullopt;
        }
        if (truncationError(map.m_values) < mostError * map.m_most) {
            return map;
        }
    }
    return std::nullopt;
}

/// False where a cycle ends with force left.
bool CycleMap::fill(std::size_t count, const PulseTrain& train, const FatigueParameters& parameters)
{
    for (std::size_t j = 0; j < count; ++j) {
        const double angle =
            std::numbers::pi * static_cast<double>(j) / static_cast<double>(count - 1);
        m_points.push_back(m_most * 0.5 * (1.0 - std::cos(angle)));
    }
    ContractionRun<Lanes> run(train, parameters);
    for (std::size_t first = 0; first < count; first += laneCount) {
        Muscle<Lanes> muscle;
        for (std::size_t lane = 0; lane < laneCount; ++lane) {
            muscle.unrecoveredImpulse.setLane(lane, m_points[first + lane]);
        }
        const ContractionForces<Lanes> forces = run.run(muscle, 0.0);
        if (anyOf(muscle.force > mostForceLeft * forces.peak)) {
            return false;
        }
        for (std::size_t lane = 0; lane < laneCount; ++lane) {
            m_values.push_back(muscle.unrecoveredImpulse.lane(lane));
        }
    }
    return true;
}

/// The barycentric formula for Chebyshev points of the second kind (Salzer 1972; Berrut and
/// Trefethen, SIAM Review 2004;46:501, eq. 5.4).
double CycleMap::after(double unrecoveredImpulse) const
{
    double numerator = 0.0;
    double denominator = 0.0;
    for (std::size_t j = 0; j < m_points.size(); ++j) {
        const double distance = unrecoveredImpulse - m_points[j];
        if (distance == 0.0) {
            return m_values[j];
        }
        const double half = j == 0 || j + 1 == m_points.size() ? 0.5 : 1.0;
        const double weight = (j % 2 == 0 ? half : -half) / distance;
        numerator += weight * m_values[j];
        denominator += weight;
    }
    return numerator / denominator;
}

} // namespace quadrille
