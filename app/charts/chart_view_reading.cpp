// SPDX-License-Identifier: GPL-3.0-or-later
// How a chart is read: crosshair, keys, pointer and the part of the axis that is shown.
#include "app/charts/chart_view.h"
#include "app/look/look.h"
#include "app/look/shapes.h"
#include "app/look/tokens.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace quadrille::app
{

namespace
{

constexpr double wheelZoom = 1.25; ///< one notch
constexpr double leastPart = 4.0;  ///< rows of the table that are always shown
constexpr int zoomedNumbers = 6;

} // namespace

void ChartView::setReadable(bool readable)
{
    m_readable = readable;
    setFocusPolicy(readable ? Qt::StrongFocus : Qt::NoFocus);
    setMouseTracking(readable);
    describe();
}

void ChartView::describe()
{
    const auto row = crosshair();
    const QString read = row ? rowText(m_spec.table, *row) + QStringLiteral(". ") : QString();
    setAccessibleDescription(read + m_spec.spoken);
    setToolTip(m_readable ? QString() : m_spec.spoken);
}

std::optional<std::size_t> ChartView::crosshair() const
{
    return m_place ? rowNearest(m_spec.table, *m_place) : std::nullopt;
}

double ChartView::shownFrom() const
{
    return m_part ? m_part->from : m_spec.x.least;
}

double ChartView::shownTo() const
{
    return m_part ? m_part->to : m_spec.x.most;
}

bool ChartView::isShown(double place) const
{
    return place >= shownFrom() && place <= shownTo();
}

ChartAxis ChartView::shownAxis() const
{
    ChartAxis axis = m_spec.x;
    if (!m_part) {
        return axis;
    }
    axis.least = m_part->from;
    axis.most = m_part->to;
    axis.ticks.clear();
    axis.tickNames.clear();
    const std::vector<double> steps = roundTicks(axis.most - axis.least, zoomedNumbers);
    const auto step = static_cast<std::size_t>(std::max(1.0, std::round(steps.at(1))));
    for (std::size_t i = 0; i < m_spec.table.rows.size(); ++i) {
        const ChartTable::Row& row = m_spec.table.rows[i];
        if (isShown(row.place) && (i == 0 || (i + 1) % step == 0)) {
            axis.ticks.push_back(row.place);
            axis.tickNames.append(row.cells.value(0));
        }
    }
    return axis;
}

void ChartView::zoomBy(double factor)
{
    zoomAround(factor, m_place.value_or((shownFrom() + shownTo()) / 2.0));
}

void ChartView::zoomAround(double factor, double place)
{
    if (!m_zoomable) {
        return;
    }
    const double before = shownTo() - shownFrom();
    const double whole = m_spec.x.most - m_spec.x.least;
    const double width = std::clamp(before / factor, std::min(leastPart, whole), whole);
    const double from = place - (place - shownFrom()) / before * width;
    showPart(from, from + width);
}

void ChartView::showPart(double from, double to)
{
    const double width = to - from;
    if (width >= m_spec.x.most - m_spec.x.least) {
        return showWhole();
    }
    const double moved = std::clamp(from, m_spec.x.least, m_spec.x.most - width);
    m_part = Part{moved, moved + width};
    draw();
}

void ChartView::showWhole()
{
    m_part.reset();
    draw();
}

void ChartView::moveCrosshair(std::optional<double> place)
{
    const auto row = place ? rowNearest(m_spec.table, *place) : std::nullopt;
    const auto rowBefore = crosshair();
    if (row == rowBefore) {
        return;
    }
    const auto at = row ? std::optional(m_spec.table.rows[*row].place) : std::nullopt;
    setCrosshair(at);
    emit crosshairMoved(at);
}

void ChartView::keyPressEvent(QKeyEvent* event)
{
    const std::vector<ChartTable::Row>& rows = m_spec.table.rows;
    const bool moves = event->key() == Qt::Key_Left || event->key() == Qt::Key_Right ||
                       event->key() == Qt::Key_Home || event->key() == Qt::Key_End;
    if (event->key() == Qt::Key_Escape && m_place) {
        return moveCrosshair(std::nullopt);
    }
    if (!m_readable || !moves || rows.empty() || event->modifiers() != Qt::NoModifier) {
        return QWidget::keyPressEvent(event);
    }
    // Rows outside the whole axis, such as weeks outside the window, are no stops.
    const auto inWhole = [&](const ChartTable::Row& row) {
        return row.place >= m_spec.x.least && row.place <= m_spec.x.most;
    };
    const auto first = std::ranges::find_if(rows, inWhole);
    const auto last = std::find_if(rows.rbegin(), rows.rend(), inWhole);
    if (first == rows.end()) {
        return;
    }
    const auto least = static_cast<int>(first - rows.begin());
    const auto most = static_cast<int>(rows.rend() - last) - 1;
    const auto now = crosshair();
    int row = now ? static_cast<int>(*now) : least - (event->key() == Qt::Key_Right ? 1 : 0);
    switch (event->key()) {
    case Qt::Key_Left:
        row = now ? row - 1 : most;
        break;
    case Qt::Key_Right:
        ++row;
        break;
    case Qt::Key_Home:
        row = least;
        break;
    default:
        row = most;
        break;
    }
    moveCrosshair(rows[static_cast<std::size_t>(std::clamp(row, least, most))].place);
}

void ChartView::mouseMoveEvent(QMouseEvent* event)
{
    if (m_readable) {
        moveCrosshair(placeAt(event->pos()));
    }
    QWidget::mouseMoveEvent(event);
}

void ChartView::mousePressEvent(QMouseEvent* event)
{
    if (m_readable) {
        moveCrosshair(placeAt(event->pos()));
    }
    QWidget::mousePressEvent(event);
}

/// Without the focus the wheel belongs to the page.
void ChartView::wheelEvent(QWheelEvent* event)
{
    const bool forMe = hasFocus() || event->modifiers().testFlag(Qt::ControlModifier);
    const int turned = event->angleDelta().y();
    if (!m_zoomable || !forMe || turned == 0) {
        return event->ignore();
    }
    const double middle = (shownFrom() + shownTo()) / 2.0;
    zoomAround(turned > 0 ? wheelZoom : 1.0 / wheelZoom,
               placeAt(event->position().toPoint()).value_or(middle));
}

void ChartView::leaveEvent(QEvent* event)
{
    if (!hasFocus()) {
        moveCrosshair(std::nullopt);
    }
    QWidget::leaveEvent(event);
}

void ChartView::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    update();
}

void ChartView::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) {
        moveCrosshair(std::nullopt);
    }
    update();
}

void ChartView::paintEvent(QPaintEvent* event)
{
    QWidget::paintEvent(event);
    if (hasFocus()) {
        QPainter painter(this);
        drawFocusRing(painter, rect(), tokensOf(palette()).mark);
    }
}

} // namespace quadrille::app
