// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grid/course_grid.h"

#include <algorithm>

namespace quadrille::app
{

std::optional<int> columnOf(const CourseGrid& grid, CourseWeek week)
{
    const int column = week.number - grid.firstWeek.number;
    const bool inside = column >= 0 && column < static_cast<int>(grid.weeks.size());
    return inside ? std::optional(column) : std::nullopt;
}

Date dayAt(const CourseGrid& grid, int column, int row)
{
    return firstDayOf(grid.startDate, {grid.firstWeek.number + column}) + std::chrono::days(row);
}

CourseGrid windowOf(const CourseGrid& grid, CourseWeek first, int weeks)
{
    const int all = static_cast<int>(grid.weeks.size());
    const int from = std::clamp(first.number - grid.firstWeek.number, 0, all);
    const int to = std::clamp(from + weeks, from, all);
    CourseGrid window = grid;
    window.firstWeek = {grid.firstWeek.number + from};
    window.weeks.assign(grid.weeks.begin() + from, grid.weeks.begin() + to);
    return window;
}

} // namespace quadrille::app
