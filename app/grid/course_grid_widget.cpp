// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grid/course_grid_widget.h"

#include "app/grid/grid_painter.h"
#include "app/grid/spoken_day.h"
#include "app/look/look.h"
#include "app/look/shapes.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QToolTip>
#include <QWheelEvent>

#include <algorithm>

namespace quadrille::app
{

namespace
{

QFont axisFont()
{
    return fontOf(TextStyle::axis, appliedFactor());
}

/// Weeks that a key adds to the chosen block; 0: another key.
int lengthensBy(const QKeyEvent& key)
{
    if (!key.modifiers().testFlag(Qt::AltModifier)) {
        return 0;
    }
    return key.key() == Qt::Key_Right ? 1 : key.key() == Qt::Key_Left ? -1 : 0;
}

} // namespace

CourseGridWidget::CourseGridWidget(const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_text(text)
{
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setAccessibleName(tr("Course grid"));
}

void CourseGridWidget::setGrid(const CourseGrid& grid)
{
    const bool sameCourse = grid.startDate == m_grid.startDate && !m_grid.weeks.empty();
    m_grid = grid;
    if (!sameCourse) {
        const int week = grid.currentWeek ? grid.currentWeek->number : grid.firstWeek.number;
        m_focus = {std::clamp(week - grid.firstWeek.number, 0, std::max(0, allWeeks() - 1)),
                   grid.todayRow.value_or(0)};
        m_firstShown = grid.firstWeek;
    }
    m_focus.column = std::clamp(m_focus.column, 0, std::max(0, allWeeks() - 1));
    moveWindow(m_firstShown.number);
    showFocus();
    if (m_grid.chosenBlock) {
        chooseBlock(m_grid.chosenBlock);
    }
    updateGeometry();
    update();
    announce();
}

void CourseGridWidget::chooseBlock(std::optional<std::size_t> index)
{
    m_grid.chosenBlock = index;
    // A pause cuts a block into several spans.
    std::optional<int> first;
    int last = 0;
    for (const BlockSpan& block : m_grid.blocks) {
        if (index == block.index) {
            first = first.value_or(block.first.number);
            last = block.first.number + block.weeks - 1;
        }
    }
    if (first) {
        showWeeks(*first, last);
    }
    update();
}

void CourseGridWidget::setPitch(int pitch)
{
    m_pitch = std::clamp(pitch, 24, 36);
    updateGeometry();
    update();
}

int CourseGridWidget::latticeLeft() const
{
    return overview().lattice().left();
}

int CourseGridWidget::pitch() const
{
    return overview().gridSize().pitch;
}

int CourseGridWidget::weeksShown() const
{
    return std::min(allWeeks(), mostWeeksShown);
}

Date CourseGridWidget::focusedDay() const
{
    return dayAt(m_grid, m_focus.column, m_focus.row);
}

QSize CourseGridWidget::sizeHint() const
{
    // Room for the focus ring and the skin mark of the last column, or for the way to later weeks.
    const bool windowed = allWeeks() > mostWeeksShown;
    const int room = windowed ? scaled(size::hitArea, appliedFactor()) : space::tiny;
    return overview().size() + QSize(room, space::hair);
}

QSize CourseGridWidget::minimumSizeHint() const
{
    return sizeHint();
}

OverviewGeometry CourseGridWidget::overview() const
{
    return {overviewSize(m_pitch, appliedFactor()), weeksShown(), namesWidthOf(m_grid, axisFont()),
            appliedFactor()};
}

CourseGrid CourseGridWidget::shownGrid() const
{
    return windowOf(m_grid, m_firstShown, weeksShown());
}

QRect CourseGridWidget::chevronRect(bool before) const
{
    const QRect head = overview().blockHead(0, weeksShown());
    const int side = scaled(size::hitArea, appliedFactor());
    const int x = before ? head.left() - side : head.right() + 1;
    return {x, head.center().y() - side / 2, side, side};
}

bool CourseGridWidget::event(QEvent* event)
{
    // Before the keys of the window: a block is lengthened, and a pull taken back.
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (lengthensBy(*key) != 0 || (m_pull && key->key() == Qt::Key_Escape)) {
            event->accept();
            return true;
        }
    }
    if (event->type() != QEvent::ToolTip) {
        return QWidget::event(event);
    }
    const auto* help = static_cast<QHelpEvent*>(event);
    if (const auto place = overview().placeAt(help->pos())) {
        QToolTip::showText(help->globalPos(), spokenDay(shownGrid(), *place, m_text), this);
    } else {
        QToolTip::hideText();
        event->ignore();
    }
    return true;
}

void CourseGridWidget::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) {
        updateGeometry();
    }
    QWidget::changeEvent(event);
}

void CourseGridWidget::keyPressEvent(QKeyEvent* event)
{
    if (const int weeks = lengthensBy(*event)) {
        emit lengthenRequested(weeks);
        return;
    }
    switch (event->key()) {
    case Qt::Key_Left:
        return moveFocus(-1, 0);
    case Qt::Key_Right:
        return moveFocus(1, 0);
    case Qt::Key_Up:
        return moveFocus(0, -1);
    case Qt::Key_Down:
        return moveFocus(0, 1);
    case Qt::Key_Home:
        return moveFocus(-allWeeks(), 0);
    case Qt::Key_End:
        return moveFocus(allWeeks(), 0);
    case Qt::Key_Escape:
        if (m_pull) {
            emit edgePulled(m_pull->edge().block, m_pull->edge().weeks);
            return endPull();
        }
        return QWidget::keyPressEvent(event);
    default:
        QWidget::keyPressEvent(event);
    }
}

void CourseGridWidget::mousePressEvent(QMouseEvent* event)
{
    const OverviewGeometry all = overview();
    const int offset = m_firstShown.number - m_grid.firstWeek.number;
    if (const auto place = all.placeAt(event->pos())) {
        m_focus = {place->column + offset, place->row};
        update();
        return announce();
    }
    for (const bool before : {true, false}) {
        if (allWeeks() > mostWeeksShown && chevronRect(before).contains(event->pos())) {
            return moveWindow(m_firstShown.number + (before ? -1 : 1));
        }
    }
    if (const auto edge = edgeAt(m_edges, all, m_firstShown, event->pos());
        edge && event->button() == Qt::LeftButton) {
        return beginPull(*edge, event->globalPosition().toPoint());
    }
    for (const BlockSpan& block : m_grid.blocks) {
        const int first = std::max(0, block.first.number - m_firstShown.number);
        const int end =
            std::min(weeksShown(), block.first.number + block.weeks - m_firstShown.number);
        if (first < end && all.blockHead(first, end - first).contains(event->pos())) {
            emit blockChosen(block.index);
            return;
        }
    }
}

void CourseGridWidget::wheelEvent(QWheelEvent* event)
{
    const int turned = event->angleDelta().x() + event->angleDelta().y();
    if (allWeeks() <= mostWeeksShown || turned == 0) {
        return event->ignore();
    }
    moveWindow(m_firstShown.number + (turned > 0 ? -1 : 1));
}

void CourseGridWidget::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    update();
}

void CourseGridWidget::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    update();
}

void CourseGridWidget::paintEvent(QPaintEvent*)
{
    if (m_grid.weeks.empty()) {
        return;
    }
    const Tokens tokens = tokensOf(palette());
    const OverviewGeometry all = overview();
    QPainter painter(this);
    paintOverview(painter, shownGrid(), all, tokens, axisFont());
    const int lastShown = m_firstShown.number + weeksShown() - 1;
    const int last = m_grid.firstWeek.number + allWeeks() - 1;
    if (m_firstShown > m_grid.firstWeek) {
        drawChevron(painter, QRectF(chevronRect(true)).center(), Direction::left, 7, tokens.mark);
    }
    if (lastShown < last) {
        drawChevron(painter, QRectF(chevronRect(false)).center(), Direction::right, 7, tokens.mark);
    }
    paintEdge(painter, all, tokens.mark);
    const int column = m_focus.column + m_grid.firstWeek.number - m_firstShown.number;
    if (hasFocus() && column >= 0 && column < weeksShown()) {
        const int out = stroke::focus + stroke::focusGap;
        const QRect mark = all.mark({column, m_focus.row});
        drawFocusRing(painter, mark.adjusted(-out, -out, out, out), tokens.mark);
    }
}

void CourseGridWidget::moveFocus(int weeks, int days)
{
    m_focus.column = std::clamp(m_focus.column + weeks, 0, std::max(0, allWeeks() - 1));
    m_focus.row = std::clamp(m_focus.row + days, 0, daysInWeek - 1);
    showFocus();
    update();
    announce();
}

void CourseGridWidget::showFocus()
{
    const int week = m_grid.firstWeek.number + m_focus.column;
    showWeeks(week, week);
}

void CourseGridWidget::moveWindow(int firstWeek)
{
    const int first = m_grid.firstWeek.number;
    const int moved = std::clamp(firstWeek, first, first + allWeeks() - weeksShown());
    if (moved != m_firstShown.number) {
        m_firstShown = {moved};
        emit windowMoved();
        update();
    }
}

void CourseGridWidget::showWeeks(int first, int last)
{
    int shown = std::max(m_firstShown.number, last - weeksShown() + 1);
    shown = std::min(shown, first);
    moveWindow(shown);
}

void CourseGridWidget::announce()
{
    setAccessibleName(m_grid.weeks.empty()
                          ? tr("Course grid")
                          : tr("Course grid. %1").arg(spokenDay(m_grid, m_focus, m_text)));
}

} // namespace quadrille::app
