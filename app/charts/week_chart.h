// SPDX-License-Identifier: GPL-3.0-or-later
// Charts over the weeks of a course. They stand under the grid, on its columns.
#pragma once

#include "app/charts/chart_spec.h"
#include "app/words/quantity_text.h"

#include "core/units.h"

#include <optional>
#include <vector>

namespace quadrille::app
{

/// Which weeks of a course are shown, and where its blocks begin.
struct WeekWindow {
    std::vector<int> firstWeeks = {}; ///< of the blocks, from 1
    int firstShown = 1;               ///< the grid's week window
    int lastShown = 1;
    std::optional<int> now = std::nullopt; ///< the current week, whose value stands out
    bool hasNumbers = false; ///< of the weeks, under the axis; on paper they always stand there
    double textFactor = 1.0; ///< larger text leaves room for fewer numbers
};

/// An amount for each week: planned as outlines with a number where it changes, done as filled
/// bars over them.
struct WeeksToShow {
    QString name = {}; ///< "On time per week"
    Unit unit = Unit::none;
    QString plannedWord = {}; ///< "planned"; also names a column of the table
    QString doneWord = {};    ///< "done"
    /// Per course week; nothing where it cannot be computed, or is not known.
    std::vector<std::optional<double>> planned = {};
    std::vector<std::optional<double>> done = {};
    WeekWindow window = {};
    int decimals = 0; ///< at most
};
ChartSpec weekChart(const WeeksToShow& weeks, const QuantityText& text);

/// A ratio for each week, as level pieces with their values; weeks without one are left empty.
struct WeekRatiosToShow {
    QString name = {};
    QString note = {}; ///< what must be said beside them
    std::vector<std::optional<double>> ratios = {};
    WeekWindow window = {};
};
ChartSpec weekRatioChart(const WeekRatiosToShow& weeks, const QuantityText& text);

} // namespace quadrille::app
