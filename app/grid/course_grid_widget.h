// SPDX-License-Identifier: GPL-3.0-or-later
// The grid of the time column: one stop for the Tab key, arrows inside.
#pragma once

#include "app/grid/course_grid.h"
#include "app/grid/edge_pull.h"
#include "app/grid/grid_geometry.h"
#include "app/words/quantity_text.h"

#include <QWidget>

#include <optional>
#include <vector>

class QPainter;

namespace quadrille::app
{

/// Shows a course grid, up to 16 weeks side by side and a window of 16 of longer courses. Each
/// square has a tooltip; the accessible name follows the square that has the focus. Edges of blocks
/// are pulled along the weeks with the pointer (Escape: back), or the chosen block is lengthened
/// with Alt and an arrow.
class CourseGridWidget : public QWidget
{
    Q_OBJECT

public:
    explicit CourseGridWidget(const QuantityText& text, QWidget* parent = nullptr);

    void setGrid(const CourseGrid& grid);
    /// Fills the head of a block and moves the window to it; nothing takes the choice away.
    void chooseBlock(std::optional<std::size_t> index);
    /// The edges that can be pulled, of the blocks in work.
    void setEdges(const std::vector<BlockEdge>& edges);
    /// 24 to 36 px at 100 % text.
    void setPitch(int pitch);

    /// Left edge of the first lattice line and the pitch: charts below stand on the same columns.
    int latticeLeft() const;
    int pitch() const;
    CourseWeek firstShownWeek() const { return m_firstShown; }
    int weeksShown() const;
    /// The square that has the focus.
    Date focusedDay() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    /// The window of weeks moved; charts follow it.
    void windowMoved();
    /// The person clicked the head of a block.
    void blockChosen(std::size_t index);
    /// The edge of a block is being pulled: the block is to have so many weeks.
    void edgePulled(std::size_t index, int weeks);
    /// The pull ended, also by Escape.
    void edgeReleased();
    /// The chosen block is to be longer or shorter.
    void lengthenRequested(int byWeeks);

protected:
    bool event(QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    OverviewGeometry overview() const;
    CourseGrid shownGrid() const;
    /// Where a chevron tells of weeks before or after the window.
    QRect chevronRect(bool before) const;
    int allWeeks() const { return static_cast<int>(m_grid.weeks.size()); }
    void moveFocus(int weeks, int days);
    void moveWindow(int firstWeek);
    /// Moves the window just so far that these weeks are in it, the first if not all fit.
    void showWeeks(int first, int last);
    void showFocus();
    void announce();
    /// Shows the pointer, and the edge under it, as what can be pulled.
    void hover(const std::optional<BlockEdge>& edge);
    void beginPull(const BlockEdge& edge, const QPoint& onScreen);
    void pullTo(const QPoint& onScreen);
    void endPull();
    void paintEdge(QPainter& painter, const OverviewGeometry& geometry, const QColor& colour) const;

    QuantityText m_text;
    CourseGrid m_grid;
    CourseWeek m_firstShown;
    int m_pitch = 24;
    std::vector<BlockEdge> m_edges;
    std::optional<BlockEdge> m_hovered;
    std::optional<EdgePull> m_pull;
    int m_pulledWeeks = 0; ///< of the block that is pulled, as said last
    GridPlace m_focus;     ///< column counted in the whole course, not in the window
};

} // namespace quadrille::app
