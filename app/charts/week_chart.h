// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"
#include "app/words/quantity_text.h"

#include <optional>
#include <vector>

namespace quadrille::app
{

/// A prescribed amount for each week of a course, under the grid: bars as outlines, a number where
/// it changes.
struct WeeksToShow {
    QString name = {}; ///< for the voice: "Contractions per week"
    std::vector<std::optional<double>> planned =
        {};                           ///< per course week; nothing where it cannot be computed
    std::vector<int> firstWeeks = {}; ///< of the blocks, from 1
    int firstShown = 1;               ///< the grid's week window
    int lastShown = 1;
};
ChartSpec weekChart(const WeeksToShow& weeks, const QuantityText& text);

} // namespace quadrille::app
