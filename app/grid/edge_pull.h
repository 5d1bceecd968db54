// SPDX-License-Identifier: GPL-3.0-or-later
// The right edge of a block on the week axis, and what pulling it along the weeks amounts to.
#pragma once

#include "app/grid/grid_geometry.h"

#include "core/calendar.h"

#include <QPoint>

#include <cstddef>
#include <optional>
#include <vector>

namespace quadrille::app
{

/// An edge that can be pulled.
struct BlockEdge {
    std::size_t block = 0;
    CourseWeek lastWeek; ///< of the block; the edge stands after it
    int weeks = 1;       ///< of the block
    int leastWeeks = 1;  ///< no shorter: what was lived stays
    friend bool operator==(const BlockEdge&, const BlockEdge&) = default;
};

/// The edge under a point of the heads and week numbers; nothing elsewhere, or where none is near.
/// `firstShown` is the week of the leftmost column.
std::optional<BlockEdge> edgeAt(const std::vector<BlockEdge>& edges,
                                const OverviewGeometry& geometry, CourseWeek firstShown,
                                const QPoint& point);

/// One pull, from press to release. Places are counted on the screen, because the grid itself moves
/// when its weeks become more.
class EdgePull
{
public:
    /// `pressedAt`: px on the screen. `pitch`: px a week.
    EdgePull(const BlockEdge& edge, int pressedAt, int pitch);

    const BlockEdge& edge() const { return m_edge; }
    /// Weeks of the block with the pointer at `x`: the nearest whole week, within what is possible.
    int weeksAt(int x) const;

private:
    BlockEdge m_edge;
    int m_pressedAt;
    int m_pitch;
};

} // namespace quadrille::app
