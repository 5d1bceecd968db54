// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointF>
#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace quadrille::app
{

/// A line through points; filled ones down to zero.
struct ChartLine {
    enum class Kind { current, comparison };
    /// Squares on the points; open ones for what is compared with, so that black and white tell.
    enum class Marker { none, filled, open };
    /// How a comparison is broken, where there are several, so that black and white tell.
    enum class Dash { even, dots, dashDot };
    std::vector<QPointF> points;
    Kind kind = Kind::current;
    bool filled = false;
    Marker marker = Marker::none;
    Dash dash = Dash::even; ///< of a comparison
};

/// Bars around whole numbers on the x axis. Planned ones are outlines, done ones filled.
struct ChartBars {
    std::vector<std::optional<double>>
        heights; ///< of 1, 2, 3 …; nothing: no bar, not one of nought
    bool filled = false;
    /// Lines through filled bars that reach above them, such as what was planned.
    std::vector<std::optional<double>> limits = {};
};

/// A word on the chart, at a point of its axes.
struct ChartText {
    /// `edge`: beyond the right end of what is shown, whatever part that is.
    enum class Place { above, below, right, centre, edge };
    QPointF at;
    QString text;
    Place place = Place::above;
    bool bold = false;
};

/// A span under the x axis with its name, ends marked: "on 10 s".
struct ChartSpan {
    double from = 0;
    double to = 0;
    QString name;
};

/// The chart in words and numbers: a row for each place that can be read on the x axis.
struct ChartTable {
    QStringList columns = {}; ///< the first names the places: "Week"
    struct Row {
        double place = 0.0; ///< on the x axis
        QStringList cells;  ///< as many as columns; numbers without units
        QString readout;    ///< the same to read beside the place: "300 planned, 180 done"
    };
    std::vector<Row> rows = {}; ///< from left to right
};

struct ChartAxis {
    double least = 0;
    double most = 1;
    std::vector<double> ticks; ///< none: no numbers
    QStringList tickNames;     ///< as many as ticks
    QString title;             ///< with the unit
    bool hasGrid = true;
    /// On a screen numbers and title stand once, below several charts; elsewhere with each.
    bool namedOnPaperOnly = false;
};

/// What a chart shows, free of any way of drawing it.
struct ChartSpec {
    ChartAxis x;
    ChartAxis y;
    std::vector<ChartLine> lines;
    std::vector<ChartBars> bars;
    std::vector<ChartText> texts;
    std::vector<ChartSpan> spans;
    std::vector<double> dividers; ///< verticals through the whole chart, such as limits of blocks
    QString spoken;               ///< the chart in one or two sentences
    QString title = {};           ///< for pictures that leave the program, with the unit
    QString note = {};            ///< what must be said beside it, such as the mark of the model
    ChartTable table = {};
};

/// The row that stands nearest to a place; nothing without rows.
std::optional<std::size_t> rowNearest(const ChartTable& table, double place);
/// "Week 5: 300 planned, 180 done".
QString rowText(const ChartTable& table, std::size_t row);

/// Round steps for an axis from 0 to at least `most`: 1, 2 or 5 times a power of ten, `wanted`
/// steps or fewer.
std::vector<double> roundTicks(double most, int wanted);

} // namespace quadrille::app
