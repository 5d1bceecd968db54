// SPDX-License-Identifier: GPL-3.0-or-later
// Pulling the edge of a block along the weeks.
#include "app/grid/course_grid_widget.h"
#include "app/look/look.h"
#include "app/look/tokens.h"
#include "app/words/trade_words.h"

#include <QCursor>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>

#include <algorithm>

namespace quadrille::app
{

void CourseGridWidget::setEdges(const std::vector<BlockEdge>& edges)
{
    m_edges = edges;
    setAccessibleDescription(
        edges.empty() ? QString()
                      : tr("Alt Right makes the chosen block a week longer, Alt Left shorter."));
    if (m_hovered && !m_pull && std::ranges::find(m_edges, *m_hovered) == m_edges.end()) {
        hover(std::nullopt);
    }
}

void CourseGridWidget::mouseMoveEvent(QMouseEvent* event)
{
    if (m_pull) {
        pullTo(event->globalPosition().toPoint());
    } else {
        hover(edgeAt(m_edges, overview(), m_firstShown, event->pos()));
    }
}

void CourseGridWidget::mouseReleaseEvent(QMouseEvent* event)
{
    if (m_pull && event->button() == Qt::LeftButton) {
        pullTo(event->globalPosition().toPoint());
        endPull();
    }
}

void CourseGridWidget::leaveEvent(QEvent* event)
{
    QWidget::leaveEvent(event);
    if (!m_pull) {
        hover(std::nullopt);
    }
}

void CourseGridWidget::hover(const std::optional<BlockEdge>& edge)
{
    if (edge == m_hovered) {
        return;
    }
    m_hovered = edge;
    if (edge) {
        setCursor(Qt::SplitHCursor);
    } else {
        unsetCursor();
    }
    update();
}

void CourseGridWidget::beginPull(const BlockEdge& edge, const QPoint& onScreen)
{
    setFocus(Qt::MouseFocusReason); // Escape is to be heard here
    hover(edge);
    m_pull.emplace(edge, onScreen.x(), pitch());
    m_pulledWeeks = edge.weeks;
}

void CourseGridWidget::pullTo(const QPoint& onScreen)
{
    const BlockEdge& edge = m_pull->edge();
    const int weeks = m_pull->weeksAt(onScreen.x());
    const CourseWeek first{edge.lastWeek.number - edge.weeks + 1};
    QToolTip::showText(onScreen,
                       tr("Block %1: %2").arg(edge.block + 1).arg(weeksName(first, weeks)), this);
    if (weeks == m_pulledWeeks) {
        return;
    }
    m_pulledWeeks = weeks;
    emit edgePulled(edge.block, weeks);
}

void CourseGridWidget::endPull()
{
    m_pull.reset();
    QToolTip::hideText();
    emit edgeReleased();
    hover(edgeAt(m_edges, overview(), m_firstShown, mapFromGlobal(QCursor::pos())));
    update();
}

void CourseGridWidget::paintEdge(QPainter& painter, const OverviewGeometry& geometry,
                                 const QColor& colour) const
{
    if (!m_hovered && !m_pull) {
        return;
    }
    const BlockEdge& edge = m_pull ? m_pull->edge() : *m_hovered;
    const int weeks = m_pull ? m_pulledWeeks : edge.weeks;
    const int column = edge.lastWeek.number - edge.weeks + weeks + 1 - m_firstShown.number;
    if (column < 1 || column > geometry.weeks()) {
        return;
    }
    const QLine limit = geometry.blockLimit(column);
    const int top = geometry.blockHead(0, 1).top();
    painter.fillRect(QRect(limit.x1() - 1, top, stroke::changedBar, limit.y2() - top + 1), colour);
}

} // namespace quadrille::app
