// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grid/mark_painter.h"

#include "app/grid/grid_geometry.h"
#include "app/look/shapes.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace quadrille::app
{

namespace
{

// Fractions of the mark's side.
constexpr double dotRadius = 0.085;
constexpr double leastDotRadius = 1.3; ///< px
constexpr double miniatureDotRadius = 0.9;
constexpr double cornerLength = 0.28;
constexpr double discRadius = 0.30;
constexpr double noteLeg = 0.38;
constexpr int miniatureNoteLeg = 3; ///< px of a 7 px mark
constexpr QPointF skinCentre(0.88, 0.12);
constexpr double skinHalfDiagonal = 0.27;
constexpr double miniatureSkinHalfDiagonal = 0.60;
constexpr double haloWidth = 0.10;
constexpr int todayGap = 2;

void fillSmooth(QPainter& painter, const QPainterPath& path, const QColor& colour)
{
    painter.setRenderHint(QPainter::Antialiasing, true);
    painter.fillPath(path, colour);
    painter.setRenderHint(QPainter::Antialiasing, false);
}

void disc(QPainter& painter, const QRect& mark, double radius, const QColor& colour)
{
    QPainterPath path;
    path.addEllipse(QRectF(mark).center(), radius, radius);
    fillSmooth(painter, path, colour);
}

/// An outline inside the mark. Its outer edge lies on whole px; only the inner edge of a stroke of
/// 1.5 px falls between two.
void outline(QPainter& painter, const QRect& mark, double width, const QColor& colour)
{
    QPainterPath path;
    path.setFillRule(Qt::OddEvenFill);
    path.addRect(QRectF(mark));
    path.addRect(QRectF(mark).adjusted(width, width, -width, -width));
    fillSmooth(painter, path, colour);
}

void corners(QPainter& painter, const QRect& mark, const QColor& colour)
{
    const int length = std::max(2, static_cast<int>(std::lround(cornerLength * mark.width())));
    const int width = static_cast<int>(std::lround(markStroke(mark.width())));
    const int right = mark.right() + 1;
    const int bottom = mark.bottom() + 1;
    for (const int y : {mark.top(), bottom - width}) {
        painter.fillRect(QRect(mark.left(), y, length, width), colour);
        painter.fillRect(QRect(right - length, y, length, width), colour);
    }
    for (const int x : {mark.left(), right - width}) {
        painter.fillRect(QRect(x, mark.top(), width, length), colour);
        painter.fillRect(QRect(x, bottom - length, width, length), colour);
    }
}

int filledHeight(const DayMark& day, int side, MarkDetail detail)
{
    if (detail == MarkDetail::miniature) {
        return side / 2;
    }
    switch (day.share) {
    case DoneShare::third:
        return static_cast<int>(std::lround(side / 3.0));
    case DoneShare::half:
        return static_cast<int>(std::lround(side / 2.0));
    case DoneShare::twoThirds:
        return static_cast<int>(std::lround(side * 2 / 3.0));
    }
    return 0;
}

void partly(QPainter& painter, const QRect& mark, const DayMark& day, const QColor& colour,
            MarkDetail detail)
{
    outline(painter, mark, markStroke(mark.width()), colour);
    const int height = filledHeight(day, mark.height(), detail);
    painter.fillRect(QRect(mark.left(), mark.bottom() + 1 - height, mark.width(), height), colour);
}

void missed(QPainter& painter, const QRect& mark, const QColor& colour)
{
    const double width = markStroke(mark.width());
    outline(painter, mark, width, colour);
    painter.setRenderHint(QPainter::Antialiasing, true);
    painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::FlatCap));
    const QRectF inner = QRectF(mark).adjusted(0.5, 0.5, -0.5, -0.5);
    painter.drawLine(inner.bottomLeft(), inner.topRight());
    painter.setRenderHint(QPainter::Antialiasing, false);
}

void tick(QPainter& painter, const QRect& mark, const Tokens& tokens)
{
    if (mark.width() >= leastTickedMark) {
        drawTick(painter, mark, tokens.onMark);
    }
}

/// The colour in which the note's flap is outlined: that of the mark it lies on.
QColor noteColour(const DayMark& day, const Tokens& tokens)
{
    switch (day.state) {
    case DayState::missed:
        return tokens.miss;
    case DayState::done:
    case DayState::partlyDone:
    case DayState::doneNotPrescribed:
        return tokens.mark;
    default:
        return tokens.ink2;
    }
}

void miniatureNote(QPainter& painter, const QRect& mark, const DayMark& day, const QColor& ground)
{
    if (day.state != DayState::done && day.state != DayState::partlyDone) {
        return;
    }
    const double leg = miniatureNoteLeg * mark.width() / 7.0;
    const QRectF box(mark);
    QPainterPath cut;
    cut.moveTo(box.bottomRight());
    cut.lineTo(box.right() - leg, box.bottom());
    cut.lineTo(box.right(), box.bottom() - leg);
    cut.closeSubpath();
    fillSmooth(painter, cut, ground);
}

void note(QPainter& painter, const QRect& mark, const DayMark& day, const Tokens& tokens,
          const QColor& ground)
{
    const double leg = std::round(noteLeg * mark.width());
    const QRectF box(mark);
    const QPointF inner(box.right() - leg, box.bottom() - leg);
    // The corner is cut away, with the outline that ran along it.
    painter.fillRect(QRectF(inner, box.bottomRight()), ground);
    QPainterPath flap;
    const double half = 0.5;
    flap.moveTo(inner.x() + half, inner.y() + half);
    flap.lineTo(box.right() - half, inner.y() + half);
    flap.lineTo(inner.x() + half, box.bottom() - half);
    flap.closeSubpath();
    painter.setRenderHint(QPainter::Antialiasing, true);
    painter.setPen(QPen(noteColour(day, tokens), 1, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(ground);
    painter.drawPath(flap);
    painter.setRenderHint(QPainter::Antialiasing, false);
}

QPainterPath diamond(const QPointF& centre, double half)
{
    QPainterPath path;
    path.moveTo(centre + QPointF(0, -half));
    path.lineTo(centre + QPointF(half, 0));
    path.lineTo(centre + QPointF(0, half));
    path.lineTo(centre + QPointF(-half, 0));
    path.closeSubpath();
    return path;
}

void skinMark(QPainter& painter, const QRect& mark, const Tokens& tokens, const QColor& ground)
{
    const double side = mark.width();
    const QPointF centre = QRectF(mark).topLeft() + skinCentre * side;
    // A halo of constant width around a diamond is a diamond larger by width · √2.
    const double half = skinHalfDiagonal * side;
    fillSmooth(painter, diamond(centre, half + haloWidth * side * std::sqrt(2.0)), ground);
    fillSmooth(painter, diamond(centre, half), tokens.hazard);
}

void state(QPainter& painter, const QRect& mark, const DayMark& day, const Tokens& tokens,
           MarkDetail detail)
{
    const double side = mark.width();
    switch (day.state) {
    case DayState::blank:
        break;
    case DayState::notPrescribed:
    case DayState::paused:
        disc(painter, mark,
             detail == MarkDetail::miniature ? miniatureDotRadius * side / 7.0
                                             : std::max(leastDotRadius, dotRadius * side),
             tokens.dot);
        break;
    case DayState::toCome:
        outline(painter, mark, stroke::line, tokens.future);
        break;
    case DayState::noDiaryYet:
        corners(painter, mark, tokens.ink2);
        break;
    case DayState::done:
        painter.fillRect(mark, tokens.mark);
        tick(painter, mark, tokens);
        break;
    case DayState::partlyDone:
        partly(painter, mark, day, tokens.mark, detail);
        break;
    case DayState::missed:
        missed(painter, mark, tokens.miss);
        break;
    case DayState::doneNotPrescribed:
        disc(painter, mark, discRadius * side, tokens.mark);
        break;
    }
}

} // namespace

double markStroke(int side)
{
    return side < 10 ? 1.0 : side < 26 ? 1.5 : 2.0;
}

void paintMark(QPainter& painter, const QRect& mark, const DayMark& day, const Tokens& tokens,
               const QColor& ground, MarkDetail detail)
{
    if (day.state == DayState::blank) {
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    if (detail == MarkDetail::miniature && day.skinMark) {
        fillSmooth(painter,
                   diamond(QRectF(mark).center(), miniatureSkinHalfDiagonal * mark.width()),
                   tokens.hazard);
        painter.restore();
        return;
    }
    state(painter, mark, day, tokens, detail);
    if (!day.note.isEmpty()) {
        detail == MarkDetail::miniature ? miniatureNote(painter, mark, day, ground)
                                        : note(painter, mark, day, tokens, ground);
    }
    if (day.skinMark) {
        skinMark(painter, mark, tokens, ground);
    }
    painter.restore();
}

void paintTodayFrame(QPainter& painter, const QRect& mark, const Tokens& tokens)
{
    drawBox(painter, mark.adjusted(-todayGap, -todayGap, todayGap, todayGap), QColor(), tokens.ink,
            stroke::line, 0);
}

} // namespace quadrille::app
