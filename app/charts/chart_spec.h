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
    std::vector<QPointF> points;
    Kind kind = Kind::current;
    bool filled = false;
    Marker marker = Marker::none;
};

/// Bars around whole numbers on the x axis. Planned ones are outlines, done ones filled.
struct ChartBars {
    std::vector<double> heights; ///< of 1, 2, 3 …
    bool filled = false;
};

/// A word on the chart, at a point of its axes.
struct ChartText {
    enum class Place { above, below, right, centre };
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

struct ChartAxis {
    double least = 0;
    double most = 1;
    std::vector<double> ticks; ///< none: no numbers
    QStringList tickNames;     ///< as many as ticks
    QString title;             ///< with the unit
    bool hasGrid = true;
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
};

/// Round steps for an axis from 0 to at least `most`: 1, 2 or 5 times a power of ten, `wanted`
/// steps or fewer.
std::vector<double> roundTicks(double most, int wanted);

} // namespace quadrille::app
