// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/shapes.h"

#include "app/look/tokens.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace quadrille::app
{

namespace
{

QPen roundedPen(const QColor& colour, double width)
{
    return {QBrush(colour), width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin};
}

/// Turns a drawing that points down into one that points to `direction`.
void turn(QPainter& painter, Direction direction)
{
    switch (direction) {
    case Direction::down:
        break;
    case Direction::up:
        painter.rotate(180);
        break;
    case Direction::left:
        painter.rotate(90);
        break;
    case Direction::right:
        painter.rotate(-90);
        break;
    }
}

} // namespace

void drawBox(QPainter& painter, const QRect& rect, const QColor& fill, const QColor& border,
             int width, int radius)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, radius > 0);
    painter.setPen(Qt::NoPen);
    // The border is the space between two filled shapes: exact at any width, with no half pixels.
    if (border.isValid() && width > 0) {
        QPainterPath path;
        path.setFillRule(Qt::OddEvenFill);
        path.addRoundedRect(QRectF(rect), radius, radius);
        const QRectF inner = QRectF(rect).adjusted(width, width, -width, -width);
        const double innerRadius = std::max(0, radius - width + 1);
        path.addRoundedRect(inner, innerRadius, innerRadius);
        if (fill.isValid()) {
            painter.setBrush(fill);
            painter.drawRoundedRect(QRectF(rect).adjusted(0.5, 0.5, -0.5, -0.5), radius, radius);
        }
        painter.setBrush(border);
        painter.drawPath(path);
    } else if (fill.isValid()) {
        painter.setBrush(fill);
        painter.drawRoundedRect(QRectF(rect), radius, radius);
    }
    painter.restore();
}

void drawFocusRing(QPainter& painter, const QRect& rect, const QColor& mark)
{
    drawBox(painter, rect, QColor(), mark, stroke::focus, stroke::cornerRadius);
}

void drawArrow(QPainter& painter, const QPointF& centre, Direction direction, double width,
               const QColor& colour)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(centre);
    turn(painter, direction);
    const double half = width / 2;
    QPainterPath path;
    path.moveTo(-half, -half / 2);
    path.lineTo(half, -half / 2);
    path.lineTo(0, half / 2 + 0.5);
    path.closeSubpath();
    painter.fillPath(path, colour);
    painter.restore();
}

void drawChevron(QPainter& painter, const QPointF& centre, Direction direction, double size,
                 const QColor& colour)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(centre);
    turn(painter, direction);
    const double half = size / 2;
    painter.setPen(QPen(colour, 2, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    QPainterPath path;
    path.moveTo(-half, -half / 2);
    path.lineTo(0, half / 2);
    path.lineTo(half, -half / 2);
    painter.drawPath(path);
    painter.restore();
}

void drawTick(QPainter& painter, const QRectF& box, const QColor& colour)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double s = box.width();
    const auto at = [&](double x, double y) { return box.topLeft() + QPointF(x * s, y * s); };
    painter.setPen(QPen(colour, std::max(1.5, 0.1 * s), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    QPainterPath path;
    path.moveTo(at(0.23, 0.50));
    path.lineTo(at(0.43, 0.72));
    path.lineTo(at(0.80, 0.26));
    painter.drawPath(path);
    painter.restore();
}

void drawWarningTriangle(QPainter& painter, const QRectF& box, const QColor& colour)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double s = box.width();
    const auto at = [&](double x, double y) { return box.topLeft() + QPointF(x * s, y * s); };
    painter.setPen(QPen(colour, s * 0.1, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    QPainterPath path;
    path.moveTo(at(0.5, 0.10));
    path.lineTo(at(0.95, 0.90));
    path.lineTo(at(0.05, 0.90));
    path.closeSubpath();
    painter.drawPath(path);
    painter.drawLine(at(0.5, 0.38), at(0.5, 0.64));
    painter.drawLine(at(0.5, 0.70), at(0.5, 0.79));
    painter.restore();
}

void drawMagnifier(QPainter& painter, const QRectF& box, const QColor& colour)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double s = box.width();
    painter.setPen(roundedPen(colour, std::max(1.4, s * 0.1)));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(box.topLeft() + QPointF(0.42 * s, 0.42 * s), 0.32 * s, 0.32 * s);
    painter.drawLine(box.topLeft() + QPointF(0.66 * s, 0.66 * s),
                     box.topLeft() + QPointF(0.95 * s, 0.95 * s));
    painter.restore();
}

} // namespace quadrille::app
