// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grid/edge_pull.h"

#include "core/block_edits.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace quadrille::app
{

namespace
{

/// Half of what can be caught; a head of one week leaves room to be clicked.
constexpr int reach = 6;

} // namespace

std::optional<BlockEdge> edgeAt(const std::vector<BlockEdge>& edges,
                                const OverviewGeometry& geometry, CourseWeek firstShown,
                                const QPoint& point)
{
    if (point.y() < 0 || point.y() >= geometry.lattice().top()) {
        return std::nullopt;
    }
    for (const BlockEdge& edge : edges) {
        const int column = edge.lastWeek.number + 1 - firstShown.number;
        const bool shown = column >= 1 && column <= geometry.weeks();
        if (shown && std::abs(point.x() - geometry.blockLimit(column).x1()) <= reach) {
            return edge;
        }
    }
    return std::nullopt;
}

EdgePull::EdgePull(const BlockEdge& edge, int pressedAt, int pitch)
    : m_edge(edge)
    , m_pressedAt(pressedAt)
    , m_pitch(pitch)
{
}

int EdgePull::weeksAt(int x) const
{
    const auto moved =
        static_cast<int>(std::lround(static_cast<double>(x - m_pressedAt) / m_pitch));
    return std::clamp(m_edge.weeks + moved, m_edge.leastWeeks,
                      std::max(m_edge.leastWeeks, mostWeeksOfBlock));
}

} // namespace quadrille::app
