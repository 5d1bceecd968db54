// SPDX-License-Identifier: GPL-3.0-or-later
// The reference tables of strength-duration curves: four series of thresholds (S1 and S2 follow
// Weiss' and Lapicque's law by construction, S3 and S4 scatter) and their fits, computed
// independently of this program, unweighted least squares, printed with 8 significant digits.
#pragma once

#include "tests/support/reference_table.h"

#include "core/strength_duration.h"

#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace quadrille::test
{

/// A law and what the reference table calls it.
struct NamedLaw {
    StrengthDurationLaw law;
    const char* name;
};
inline constexpr std::array namedLaws{NamedLaw{StrengthDurationLaw::weiss, "weiss"},
                                      NamedLaw{StrengthDurationLaw::weissOnCharge, "weissq"},
                                      NamedLaw{StrengthDurationLaw::lapicque, "lapicque"}};

inline ReferenceTable referenceFits()
{
    return ReferenceTable::fromFile(QUADRILLE_TEST_REFERENCE "/strength_duration_fits.csv");
}

/// The thresholds of one series, each as a whole number of 1 mA / `partsPerMilliampere`.
inline std::vector<ThresholdPoint> seriesOf(const std::string& series, double partsPerMilliampere)
{
    const auto table =
        ReferenceTable::fromFile(QUADRILLE_TEST_REFERENCE "/strength_duration_points.csv");
    std::vector<ThresholdPoint> points;
    for (std::size_t row = 0; row < table.rowCount(); ++row) {
        if (table.text(row, "dataset_id") == series) {
            const double threshold = table.number(row, "threshold_ma") * partsPerMilliampere;
            points.push_back(
                {PhaseDuration::fromCount(table.thousandths(row, "phase_duration_us") / 1000),
                 Amplitude::fromCount(std::llround(threshold))});
        }
    }
    return points;
}

} // namespace quadrille::test
