// SPDX-License-Identifier: GPL-3.0-or-later
// The grid of the time column: one stop for the Tab key, arrows inside.
#pragma once

#include "app/grid/course_grid.h"
#include "app/grid/grid_geometry.h"
#include "app/words/quantity_text.h"

#include <QWidget>

#include <optional>

namespace quadrille::app
{

/// Shows a course grid, up to 16 weeks side by side and a window of 16 of longer courses. Each
/// square has a tooltip; the accessible name follows the square that has the focus.
class CourseGridWidget : public QWidget
{
    Q_OBJECT

public:
    explicit CourseGridWidget(const QuantityText& text, QWidget* parent = nullptr);

    void setGrid(const CourseGrid& grid);
    /// Fills the head of a block and moves the window to it; nothing takes the choice away.
    void chooseBlock(std::optional<std::size_t> index);
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

protected:
    bool event(QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
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

    QuantityText m_text;
    CourseGrid m_grid;
    CourseWeek m_firstShown;
    int m_pitch = 24;
    GridPlace m_focus; ///< column counted in the whole course, not in the window
};

} // namespace quadrille::app
