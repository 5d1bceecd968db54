// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

namespace quadrille
{

/// Least squares of Lapicque's law, threshold = rheobase / (1 - exp(-duration / tau)).
struct LapicqueConstants {
    double rheobase = 0.0; ///< in the unit of the thresholds; above 0
    double tau = 0.0;      ///< in the unit of the durations; above 0
};

/// Durations and thresholds, all above 0, as many of the one as of the other, at least two
/// durations different. Nothing where the squares have no minimum: where the thresholds fall as
/// fast as 1/duration or faster (tau would grow without end), or do not fall at all (it would
/// shrink to 0).
std::optional<LapicqueConstants> leastLapicqueSquares(const std::vector<double>& durations,
                                                      const std::vector<double>& thresholds);

} // namespace quadrille
