// SPDX-License-Identifier: GPL-3.0-or-later
// What keys and pointer do on the page.
#include "app/diary/diary_grid.h"
#include "app/look/tokens.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QMouseEvent>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int daysOfWeek = 7;

DiaryDraft::Act act(void (DiarySheet::*moves)(int), int by)
{
    return [moves, by](DiarySheet& sheet) {
        (sheet.*moves)(by);
        return DiaryAnswer();
    };
}

DiaryDraft::Act goTo(DiaryField field)
{
    return [field](DiarySheet& sheet) {
        sheet.goToField(field);
        return DiaryAnswer();
    };
}

DiaryDraft::Act goTo(const DiaryPlace& place)
{
    return [place](DiarySheet& sheet) {
        sheet.goTo(place);
        return DiaryAnswer();
    };
}

} // namespace

void DiaryGrid::keyPressEvent(QKeyEvent* event)
{
    if (moveKey(*event) || fieldKey(*event)) {
        return;
    }
    if (m_writable && (verbKey(*event) || signKey(*event))) {
        return;
    }
    QWidget::keyPressEvent(event);
}

bool DiaryGrid::moveKey(const QKeyEvent& key)
{
    const bool marks = key.modifiers().testFlag(Qt::ShiftModifier);
    const auto byDays = [&](int days) {
        move(act(marks ? &DiarySheet::extendRun : &DiarySheet::moveDays, days));
        return true;
    };
    const bool sideways = key.key() == Qt::Key_Left || key.key() == Qt::Key_Right;
    if (sideways && m_draft.sheet().isTouched() && !marks) {
        return true; // the number is not finished yet
    }
    const bool onPages = key.modifiers().testFlag(Qt::ControlModifier);
    switch (key.key()) {
    case Qt::Key_Up:
        return byDays(-1);
    case Qt::Key_Down:
        return byDays(1);
    case Qt::Key_Left:
        return byDays(-daysOfWeek);
    case Qt::Key_Right:
        return byDays(daysOfWeek);
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
        if (onPages) {
            move(act(&DiarySheet::turnPage, key.key() == Qt::Key_PageUp ? -1 : 1));
        }
        return onPages;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        move([](DiarySheet& sheet) { return sheet.goOn(); });
        return true;
    default:
        return false;
    }
}

bool DiaryGrid::fieldKey(const QKeyEvent& key)
{
    if (key.modifiers().testFlag(Qt::ControlModifier)) {
        return false;
    }
    switch (key.key()) {
    case Qt::Key_S:
        move(goTo(DiaryField::skin));
        return true;
    case Qt::Key_N:
        move(goTo(DiaryField::remark));
        return true;
    case Qt::Key_Plus:
        move([](DiarySheet& sheet) { return sheet.openExtra(); });
        return true;
    default:
        return false;
    }
}

bool DiaryGrid::verbKey(const QKeyEvent& key)
{
    if (key.modifiers().testFlag(Qt::ControlModifier)) {
        if (key.key() == Qt::Key_D) {
            write(tr("Rest of the week as prescribed"), &DiarySheet::restOfWeek);
            return true;
        }
        return false;
    }
    switch (key.key()) {
    case Qt::Key_Space:
        write(tr("Minutes as prescribed"), &DiarySheet::asPrescribed);
        return true;
    case Qt::Key_F:
        write(tr("Fill the marked days"), &DiarySheet::fillRun);
        return true;
    case Qt::Key_U:
        write(tr("Copy the day above"), &DiarySheet::copyAbove);
        return true;
    case Qt::Key_L:
        write(tr("Diary received"), &DiarySheet::receivedThroughHere);
        return true;
    case Qt::Key_Delete:
        write(tr("Empty the field"), &DiarySheet::empty);
        return true;
    default:
        return false;
    }
}

bool DiaryGrid::signKey(const QKeyEvent& key)
{
    if (key.key() == Qt::Key_Backspace) {
        // Alone it would be the way back to the caseload.
        answer(m_draft.typeSign(tr("Type an entry"),
                                [](DiarySheet& sheet) { return sheet.backspace(); }));
        return true;
    }
    const QString signs = key.text();
    const char sign = signs.size() == 1 ? signs.front().toLatin1() : '\0';
    const bool isDecimal = sign == '.' || sign == ',';
    if (!isDecimal && (sign < '0' || sign > '9')) {
        return false;
    }
    answer(m_draft.typeSign(tr("Type an entry"),
                            [&](DiarySheet& sheet) { return sheet.type(isDecimal ? '.' : sign); }));
    return true;
}

bool DiaryGrid::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_notes && event->type() == QEvent::FocusOut) {
        commitNotes();
        update();
    }
    if (watched != m_notes || event->type() != QEvent::KeyPress) {
        return QWidget::eventFilter(watched, event);
    }
    const auto* key = static_cast<QKeyEvent*>(event);
    switch (key->key()) {
    case Qt::Key_Escape:
        m_notes->setModified(false);
        move(goTo(DiaryField::minutes));
        return true;
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_Return:
    case Qt::Key_Enter:
        moveKey(*key);
        return true;
    default:
        return QWidget::eventFilter(watched, event);
    }
}

void DiaryGrid::mousePressEvent(QMouseEvent* event)
{
    const QPoint point = event->position().toPoint();
    const auto column = m_geometry.columnAt(point.x());
    const auto row = m_geometry.rowAt(point.y());
    if (event->button() != Qt::LeftButton || !column || !row) {
        return QWidget::mousePressEvent(event);
    }
    commitNotes();
    const DiarySheet& sheet = m_draft.sheet();
    const Date date =
        sheet.form().startDate +
        std::chrono::days((m_geometry.firstWeek().number + *column - 1) * daysOfWeek + *row);
    const DiaryFormDay* day = sheet.form().find(date);
    if (day == nullptr) {
        return;
    }
    if (event->modifiers().testFlag(Qt::ShiftModifier)) {
        move(act(&DiarySheet::extendRun, static_cast<int>((date - sheet.place().day).count())));
        return;
    }
    const int lines = std::max(1, sheet.linesOf(date));
    for (int session = 1; session <= lines; ++session) {
        const QRect line = m_geometry.line(*column, *row, session);
        if (!line.contains(point)) {
            continue;
        }
        DiaryPlace place{.day = date, .session = session};
        const int fields = fieldsOfLine(*day);
        for (int i = 1; i < fields; ++i) {
            if (m_geometry.field(line, i, fields).contains(point)) {
                place.field = i + 1 == fields ? DiaryField::comfort : DiaryField::amplitude;
                place.site = i + 1 == fields ? 0 : static_cast<std::size_t>(i) - 1;
            }
        }
        return pressSession(place, m_geometry.mark(line).contains(point));
    }
    const QRect dayLine = m_geometry.dayLine(*column, *row, lines);
    const bool open = sheet.place().day == date && sheet.place().field == DiaryField::skin;
    for (int answerPressed = 0; open && answerPressed <= 3; ++answerPressed) {
        const int gap = (size::hitArea - m_geometry.skinAnswer(dayLine, 0).width()) / 2;
        if (m_writable && m_geometry.skinAnswer(dayLine, answerPressed)
                              .adjusted(-gap, -gap, gap, gap)
                              .contains(point)) {
            answer(m_draft.write(tr("Skin"), [&](DiarySheet& sheetNow) {
                return sheetNow.type(static_cast<char>('0' + answerPressed));
            }));
            return;
        }
    }
    const bool onNotes = m_geometry.notes(dayLine, open).contains(point);
    move(goTo(DiaryPlace{date, 1, onNotes ? DiaryField::remark : DiaryField::skin, 0}));
}

void DiaryGrid::pressSession(const DiaryPlace& place, bool onMark)
{
    move(goTo(place));
    const WrittenDay& day = m_draft.sheet().diary().on(place.day);
    const auto session = day.sessions.find(place.session);
    const bool isEmpty = session == day.sessions.end() || !session->second.time;
    if (m_writable && onMark && isEmpty) { // a tick on paper, a tick here
        write(tr("Minutes as prescribed"), &DiarySheet::asPrescribed);
    }
}

} // namespace quadrille::app
