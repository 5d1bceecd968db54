// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"
#include "app/words/quantity_text.h"

#include "core/calendar.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille::app
{

/// One side's values over the course.
struct MeasuredLine {
    QString name = {}; ///< "right"; empty where a kind has no side
    struct Point {
        Date day;
        double value = 0.0; ///< in the shown unit
        QString text;       ///< "68 N·m"
    };
    std::vector<Point> points = {}; ///< the earliest first
    bool compared = false;          ///< the other side: dashed, open squares
};

/// A figure under the lines, such as a symmetry index.
struct MeasuredNote {
    Date day;
    QString text;
};

/// One kind over the weeks of a course, with the name of each side at its last point.
struct MeasurementsToShow {
    QString name = {}; ///< for the voice
    Date courseStart;
    int weeks = 1; ///< at least so many are shown
    std::vector<MeasuredLine> lines = {};
    std::vector<MeasuredNote> notes = {};
    std::optional<double> scaleEnd = std::nullopt; ///< a scale from 0 to here
    double textFactor = 1.0;                       ///< larger text leaves room for fewer numbers
};
ChartSpec measurementChart(const MeasurementsToShow& shown, const QuantityText& text);

} // namespace quadrille::app
