// SPDX-License-Identifier: GPL-3.0-or-later
// The grid as a whole, for screen and paper alike.
#pragma once

#include "app/grid/course_grid.h"
#include "app/grid/grid_geometry.h"
#include "app/look/tokens.h"

#include <QFont>

class QPainter;

namespace quadrille::app
{

/// The widest of the grid's weekday names and of "Week" in the font of axes, bold included; px.
int namesWidthOf(const CourseGrid& grid, const QFont& axisFont);

/// Draws the overview with its head, from the painter's origin. `geometry` has as many weeks as
/// `grid`.
void paintOverview(QPainter& painter, const CourseGrid& grid, const OverviewGeometry& geometry,
                   const Tokens& tokens, const QFont& axisFont);

/// Draws the first four weeks of `grid` as a miniature; `ground` is the row's colour.
void paintMiniature(QPainter& painter, const QPoint& origin, const CourseGrid& grid, GridSize size,
                    const Tokens& tokens, const QColor& ground);

} // namespace quadrille::app
