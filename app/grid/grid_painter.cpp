// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grid/grid_painter.h"

#include "app/grid/mark_painter.h"
#include "app/look/shapes.h"

#include <QCoreApplication>
#include <QFontMetrics>
#include <QPainter>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct GridWords {
    Q_DECLARE_TR_FUNCTIONS(GridWords)
};

constexpr int leastNamedHead = 44; ///< px; a narrower head shows the number alone

QString weekWord()
{
    return GridWords::tr("Week", "before the week numbers");
}

QFont bold(const QFont& font)
{
    QFont made = font;
    made.setBold(true);
    return made;
}

void fillLine(QPainter& painter, const QLine& line, const QColor& colour)
{
    painter.fillRect(QRect(line.x1(), line.y1(), 1, line.y2() - line.y1() + 1), colour);
}

void paintLattice(QPainter& painter, const OverviewGeometry& geometry, const Tokens& tokens)
{
    const QRect lattice = geometry.lattice();
    const int pitch = geometry.gridSize().pitch;
    painter.fillRect(lattice, tokens.sheet);
    for (int column = 0; column <= geometry.weeks(); ++column) {
        painter.fillRect(QRect(lattice.left() + column * pitch, lattice.top(), 1, lattice.height()),
                         tokens.rule);
    }
    for (int row = 0; row <= daysInWeek; ++row) {
        painter.fillRect(QRect(lattice.left(), lattice.top() + row * pitch, lattice.width(), 1),
                         tokens.rule);
    }
    fillLine(painter, geometry.marginLine(), tokens.margin);
}

void paintBlockHead(QPainter& painter, const BlockSpan& block, const QRect& head, bool chosen,
                    const Tokens& tokens, const QFont& font)
{
    drawBox(painter, head, chosen ? tokens.mark : tokens.sheet, chosen ? tokens.mark : tokens.edge,
            stroke::line, 0);
    const QFont used = chosen ? bold(font) : font;
    const int room = head.width() - 2 * stroke::line;
    const bool fits =
        head.width() >= leastNamedHead && QFontMetrics(used).horizontalAdvance(block.name) <= room;
    painter.setFont(used);
    painter.setPen(chosen ? tokens.onMark : tokens.ink2);
    painter.drawText(head, Qt::AlignCenter, fits ? block.name : block.shortName);
}

void paintBlocks(QPainter& painter, const CourseGrid& grid, const OverviewGeometry& geometry,
                 const Tokens& tokens, const QFont& font)
{
    const int weeks = geometry.weeks();
    for (const BlockSpan& block : grid.blocks) {
        // A window may begin or end inside a block.
        const int from = block.first.number - grid.firstWeek.number;
        const int first = std::max(0, from);
        const int end = std::min(weeks, from + block.weeks);
        if (first >= end) {
            continue;
        }
        const bool chosen = !block.isPause && grid.chosenBlock == block.index;
        paintBlockHead(painter, block, geometry.blockHead(first, end - first), chosen, tokens,
                       font);
        if (from > 0) {
            fillLine(painter, geometry.blockLimit(first), tokens.edge);
        }
    }
}

void paintNames(QPainter& painter, const CourseGrid& grid, const OverviewGeometry& geometry,
                const Tokens& tokens, const QFont& font)
{
    const auto write = [&](const QRect& rect, int alignment, const QString& text, bool now) {
        painter.setFont(now ? bold(font) : font);
        painter.setPen(now ? tokens.ink : tokens.ink3);
        painter.drawText(rect, alignment | Qt::AlignVCenter | Qt::TextDontClip, text);
    };
    write(geometry.weekWord(), Qt::AlignRight, weekWord(), false);
    const auto currentColumn =
        grid.currentWeek ? columnOf(grid, *grid.currentWeek) : std::optional<int>();
    for (int column = 0; column < geometry.weeks(); ++column) {
        write(geometry.weekNumber(column), Qt::AlignHCenter,
              QString::number(grid.firstWeek.number + column), column == currentColumn);
    }
    for (int row = 0; row < daysInWeek; ++row) {
        write(geometry.weekdayName(row), Qt::AlignRight,
              grid.weekdayNames[static_cast<std::size_t>(row)], row == grid.todayRow);
    }
}

} // namespace

int namesWidthOf(const CourseGrid& grid, const QFont& axisFont)
{
    const QFontMetrics metrics(bold(axisFont));
    int width = metrics.horizontalAdvance(weekWord());
    for (const QString& name : grid.weekdayNames) {
        width = std::max(width, metrics.horizontalAdvance(name));
    }
    return width + 1;
}

void paintOverview(QPainter& painter, const CourseGrid& grid, const OverviewGeometry& geometry,
                   const Tokens& tokens, const QFont& axisFont)
{
    painter.save();
    paintLattice(painter, geometry, tokens);
    paintBlocks(painter, grid, geometry, tokens, axisFont);
    paintNames(painter, grid, geometry, tokens, axisFont);
    for (int column = 0; column < geometry.weeks(); ++column) {
        const WeekMarks& week = grid.weeks[static_cast<std::size_t>(column)];
        for (int row = 0; row < daysInWeek; ++row) {
            paintMark(painter, geometry.mark({column, row}), week[static_cast<std::size_t>(row)],
                      tokens, tokens.sheet, MarkDetail::full);
        }
    }
    const auto column = grid.currentWeek ? columnOf(grid, *grid.currentWeek) : std::nullopt;
    if (column && grid.todayRow) {
        paintTodayFrame(painter, geometry.mark({*column, *grid.todayRow}), tokens);
    }
    painter.restore();
}

void paintMiniature(QPainter& painter, const QPoint& origin, const CourseGrid& grid, GridSize size,
                    const Tokens& tokens, const QColor& ground)
{
    const int weeks = std::min(miniatureWeeks, static_cast<int>(grid.weeks.size()));
    const auto paint = [&](bool skinMarks) {
        for (int column = 0; column < weeks; ++column) {
            for (int row = 0; row < daysInWeek; ++row) {
                const DayMark& day =
                    grid.weeks[static_cast<std::size_t>(column)][static_cast<std::size_t>(row)];
                if (day.skinMark == skinMarks) {
                    paintMark(painter, miniatureMark(origin, size, {column, row}), day, tokens,
                              ground, MarkDetail::miniature);
                }
            }
        }
    };
    paint(false);
    // Diamonds are larger than their squares and lie on top of the neighbours.
    paint(true);
}

} // namespace quadrille::app
