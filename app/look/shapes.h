// SPDX-License-Identifier: GPL-3.0-or-later
// The few shapes that controls and pages share, drawn by us in whatever colour is asked for, so
// that they follow the scheme and any size.
#pragma once

#include <QColor>
#include <QRect>

class QPainter;

namespace quadrille::app
{

enum class Direction { up, down, left, right };

/// A flat box: filled, with a border of `width` px inside `rect` and corners of `radius`. An
/// invalid colour leaves fill or border out.
void drawBox(QPainter& painter, const QRect& rect, const QColor& fill, const QColor& border,
             int width, int radius);
/// The ring of the keyboard focus: 2 px inside `rect`.
void drawFocusRing(QPainter& painter, const QRect& rect, const QColor& mark);
/// A small filled triangle for spin boxes, combos and submenus, `width` across its base.
void drawArrow(QPainter& painter, const QPointF& centre, Direction direction, double width,
               const QColor& colour);
/// An open angle: the way back, months of a calendar.
void drawChevron(QPainter& painter, const QPointF& centre, Direction direction, double size,
                 const QColor& colour);
/// The tick of the grid's done square, in the same proportions.
void drawTick(QPainter& painter, const QRectF& box, const QColor& colour);
/// The open triangle with a stroke in it: look here.
void drawWarningTriangle(QPainter& painter, const QRectF& box, const QColor& colour);
void drawMagnifier(QPainter& painter, const QRectF& box, const QColor& colour);

} // namespace quadrille::app
