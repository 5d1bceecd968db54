// SPDX-License-Identifier: GPL-3.0-or-later
// Where everything of the grid stands. Whole px (or whole units of the paper's painter) only, so
// that lines stay sharp.
#pragma once

#include <QLine>
#include <QPoint>
#include <QRect>
#include <QSize>

#include <optional>

namespace quadrille::app
{

/// Pitch of the cells and side of the mark centred in each, px.
struct GridSize {
    int pitch = 24;
    int mark = 18;
    friend bool operator==(const GridSize&, const GridSize&) = default;
};

/// The small grid of a list: four weeks, no lattice. `factor` 1.0 is 100 % text.
GridSize miniatureSize(double factor);
/// The grid of the time column; `pitch` 24 to 36 px at 100 %.
GridSize overviewSize(int pitch, double factor);

/// The side of the mark from which a done square carries a tick.
inline constexpr int leastTickedMark = 22;
/// The most weeks that stand side by side; longer courses show a window.
inline constexpr int mostWeeksShown = 16;
/// Weeks of a miniature.
inline constexpr int miniatureWeeks = 4;

/// A square by column and row.
struct GridPlace {
    int column = 0;
    int row = 0;
    friend bool operator==(const GridPlace&, const GridPlace&) = default;
};

/// The overview: heads of blocks, week numbers, weekday names, margin line and cells, from the top
/// left corner of everything.
class OverviewGeometry
{
public:
    /// `namesWidth`: the widest weekday name, px.
    OverviewGeometry(GridSize size, int weeks, int namesWidth, double factor);

    GridSize gridSize() const { return m_size; }
    int weeks() const { return m_weeks; }
    QSize size() const;
    /// From the first to the last lattice line, both included.
    QRect lattice() const;
    QRect cell(GridPlace place) const;
    QRect mark(GridPlace place) const;
    QRect weekNumber(int column) const;
    /// Where "Week" stands, before the week numbers.
    QRect weekWord() const;
    QRect weekdayName(int row) const;
    /// The head over columns `first` … `first + weeks − 1`.
    QRect blockHead(int first, int weeks) const;
    /// The line before column `first`, up into the head.
    QLine blockLimit(int first) const;
    QLine marginLine() const;
    /// The square under a point; the lattice line belongs to the square after it.
    std::optional<GridPlace> placeAt(const QPoint& point) const;

private:
    GridSize m_size;
    int m_weeks;
    int m_namesWidth;
    double m_factor;
};

/// The square of a miniature whose top left corner is `origin`.
QRect miniatureMark(const QPoint& origin, GridSize size, GridPlace place);
QSize miniatureExtent(GridSize size);

} // namespace quadrille::app
