// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grid/grid_geometry.h"

#include "app/grid/course_grid.h"
#include "app/look/look.h"

namespace quadrille::app
{

namespace
{

constexpr int blockHeadHeight = 17;
constexpr int weekNumberHeight = 19;
constexpr int blockLimitRise = 20;
constexpr int blockHeadInset = 2;
constexpr int namesToMargin = 5;
constexpr int marginToLattice = 3;
constexpr int markInset = 6; ///< pitch − mark of the overview

} // namespace

GridSize miniatureSize(double factor)
{
    return {scaled(8, factor), scaled(7, factor)};
}

GridSize overviewSize(int pitch, double factor)
{
    const int side = scaled(pitch, factor);
    return {side, side - scaled(markInset, factor)};
}

OverviewGeometry::OverviewGeometry(GridSize size, int weeks, int namesWidth, double factor)
    : m_size(size)
    , m_weeks(weeks)
    , m_namesWidth(namesWidth)
    , m_factor(factor)
{
}

QRect OverviewGeometry::lattice() const
{
    const int left = m_namesWidth + namesToMargin + marginToLattice;
    const int top = scaled(blockHeadHeight, m_factor) + scaled(weekNumberHeight, m_factor);
    return {left, top, m_weeks * m_size.pitch + 1, daysInWeek * m_size.pitch + 1};
}

QSize OverviewGeometry::size() const
{
    const QRect grid = lattice();
    return {grid.right() + 1, grid.bottom() + 1};
}

QRect OverviewGeometry::cell(GridPlace place) const
{
    const QRect grid = lattice();
    return {grid.left() + place.column * m_size.pitch, grid.top() + place.row * m_size.pitch,
            m_size.pitch, m_size.pitch};
}

QRect OverviewGeometry::mark(GridPlace place) const
{
    const int inset = (m_size.pitch - m_size.mark) / 2;
    return {cell(place).topLeft() + QPoint(inset, inset), QSize(m_size.mark, m_size.mark)};
}

QRect OverviewGeometry::weekNumber(int column) const
{
    const QRect below = cell({column, 0});
    const int height = scaled(weekNumberHeight, m_factor);
    return {below.left(), below.top() - height, below.width() + 1, height};
}

QRect OverviewGeometry::weekWord() const
{
    const QRect first = weekNumber(0);
    return {0, first.top(), m_namesWidth, first.height()};
}

QRect OverviewGeometry::weekdayName(int row) const
{
    const QRect beside = cell({0, row});
    return {0, beside.top(), m_namesWidth, beside.height() + 1};
}

QRect OverviewGeometry::blockHead(int first, int weeks) const
{
    const int left = cell({first, 0}).left() + blockHeadInset;
    const int right = cell({first + weeks, 0}).left() - blockHeadInset;
    return {left, 0, right - left, scaled(blockHeadHeight, m_factor)};
}

QLine OverviewGeometry::blockLimit(int first) const
{
    const int x = cell({first, 0}).left();
    const QRect grid = lattice();
    return {x, grid.top() - scaled(blockLimitRise, m_factor), x, grid.bottom()};
}

QLine OverviewGeometry::marginLine() const
{
    const QRect grid = lattice();
    const int x = grid.left() - marginToLattice;
    return {x, grid.top(), x, grid.bottom()};
}

std::optional<GridPlace> OverviewGeometry::placeAt(const QPoint& point) const
{
    const QRect grid = lattice();
    const QPoint inside = point - grid.topLeft();
    const GridPlace place{inside.x() / m_size.pitch, inside.y() / m_size.pitch};
    const bool hit =
        inside.x() >= 0 && inside.y() >= 0 && place.column < m_weeks && place.row < daysInWeek;
    return hit ? std::optional(place) : std::nullopt;
}

QRect miniatureMark(const QPoint& origin, GridSize size, GridPlace place)
{
    return {origin + QPoint(place.column * size.pitch, place.row * size.pitch),
            QSize(size.mark, size.mark)};
}

QSize miniatureExtent(GridSize size)
{
    const int gap = size.pitch - size.mark;
    return {miniatureWeeks * size.pitch - gap, daysInWeek * size.pitch - gap};
}

} // namespace quadrille::app
