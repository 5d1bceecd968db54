// SPDX-License-Identifier: GPL-3.0-or-later
// One square: shape, fill and stroke carry the state, colour only repeats it.
#pragma once

#include "app/grid/course_grid.h"
#include "app/look/tokens.h"

#include <QRect>

class QPainter;

namespace quadrille::app
{

/// How much of a square there is room for.
enum class MarkDetail {
    miniature, ///< every partly done day is one half, a skin mark takes the whole square
    full,
};

/// Draws mark, note and skin mark into `mark`, a square of whole px. `ground` is what lies behind:
/// it cuts the note's corner and makes the halo of the skin mark. On paper the painter is scaled.
void paintMark(QPainter& painter, const QRect& mark, const DayMark& day, const Tokens& tokens,
               const QColor& ground, MarkDetail detail);

/// The frame of today, 2 px outside the mark.
void paintTodayFrame(QPainter& painter, const QRect& mark, const Tokens& tokens);

/// Width of the strokes of a mark of side `side`, px.
double markStroke(int side);

} // namespace quadrille::app
