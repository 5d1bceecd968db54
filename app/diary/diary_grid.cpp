// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/diary_grid.h"

#include "app/diary/diary_painter.h"
#include "app/diary/diary_words.h"
#include "app/look/look.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int rows = 7;
constexpr int usualWidth = 900;
constexpr qsizetype usualNote = 200; ///< letters that are typed into a note

} // namespace

DiaryGrid::DiaryGrid(DiaryDraft& draft, const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_draft(draft)
    , m_text(text)
    , m_notes(new QLineEdit(this))
{
    setObjectName(QStringLiteral("diaryGrid"));
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    m_notes->setObjectName(QStringLiteral("diaryNotes"));
    m_notes->hide();
    m_notes->installEventFilter(this);
    connect(&m_draft, &DiaryDraft::changed, this, &DiaryGrid::refresh);
    connect(&m_draft, &DiaryDraft::moved, this, &DiaryGrid::layOutWeeks);
    refresh();
}

void DiaryGrid::setRules(const AdherenceRules& rules)
{
    m_rules = rules;
    refresh();
}

void DiaryGrid::setMostWeeks(int most)
{
    m_mostWeeks = most;
    layOutWeeks();
}

void DiaryGrid::setRoom(int width)
{
    if (m_room != width) {
        m_room = width;
        layOutWeeks();
    }
}

void DiaryGrid::refresh()
{
    m_preview = m_draft.preview();
    m_lived = courseAsLived(m_preview, m_rules, m_draft.sheet().form().today);
    layOutWeeks();
}

void DiaryGrid::layOutWeeks()
{
    const DiarySheet& sheet = m_draft.sheet();
    const double factor = appliedFactor();
    const QFontMetrics names(fontOf(TextStyle::strong, factor));
    int namesWidth = 0;
    for (int row = 0; row < rows; ++row) {
        const Weekday day(sheet.form().startDate + std::chrono::days(row));
        namesWidth = std::max(namesWidth, names.horizontalAdvance(m_text.shortWeekday(day)));
    }
    const int least = DiaryGeometry::leastWeekWidth(sheet, factor);
    const int room = m_room > 0 ? m_room : scaled(usualWidth, factor);
    int weeks = m_mostWeeks;
    while (weeks > 1 && namesWidth + scaled(20, factor) + weeks * least > room) {
        weeks /= 2;
    }
    const auto weekOfPage = static_cast<int>(
        (sheet.place().day - sheet.form().firstDayOfPage(sheet.page())).count() / rows);
    const CourseWeek first{sheet.page() * weeksOfDiaryPage + weekOfPage / weeks * weeks + 1};
    m_geometry = DiaryGeometry(sheet, first, weeks, room, namesWidth, factor);
    placeNotes();
    setAccessibleName(tr("Diary page. %1").arg(spokenPlace(sheet, m_text)));
    if (hasAnyFocus()) {
        emit said(expectedText(sheet, m_text));
    }
    updateGeometry();
    update();
}

bool DiaryGrid::hasAnyFocus() const
{
    return hasFocus() || m_notes->hasFocus();
}

QSize DiaryGrid::sizeHint() const
{
    return m_geometry.size();
}

QSize DiaryGrid::minimumSizeHint() const
{
    return sizeHint();
}

QRect DiaryGrid::placeRect() const
{
    const DiarySheet& sheet = m_draft.sheet();
    const auto days = (sheet.place().day - sheet.form().startDate).count();
    const int column = static_cast<int>(days / rows) + 1 - m_geometry.firstWeek().number;
    return m_geometry.cell(std::clamp(column, 0, m_geometry.weeks() - 1),
                           static_cast<int>(days % rows));
}

void DiaryGrid::placeNotes()
{
    const DiarySheet& sheet = m_draft.sheet();
    const DiaryPlace& place = sheet.place();
    const bool wanted =
        m_writable && (place.field == DiaryField::pad || place.field == DiaryField::remark);
    if (!wanted) {
        if (m_notes->hasFocus()) { // before it hides, or the focus would go on by itself
            setFocus(Qt::OtherFocusReason);
        }
        m_notes->hide();
        return;
    }
    const auto days = (place.day - sheet.form().startDate).count();
    const int column = static_cast<int>(days / rows) + 1 - m_geometry.firstWeek().number;
    const QRect line = m_geometry.dayLine(column, static_cast<int>(days % rows),
                                          std::max(1, sheet.linesOf(place.day)));
    m_notes->setGeometry(m_geometry.notes(line, false));
    const WrittenDay& day = sheet.diary().on(place.day);
    const std::string& written = place.field == DiaryField::pad ? day.skinPad : day.remark;
    if (m_notes->isHidden() || !m_notes->isModified()) {
        const QString whole = QString::fromStdString(written);
        // More than what is written already: a file may have brought a long remark.
        m_notes->setMaxLength(static_cast<int>(whole.size() + usualNote));
        m_notes->setText(whole);
    }
    m_notes->setPlaceholderText(place.field == DiaryField::pad ? tr("which pad") : tr("remark"));
    m_notes->setAccessibleName(expectedText(sheet, m_text));
    m_notes->show();
    if (hasFocus()) {
        m_notes->setFocus(Qt::OtherFocusReason);
        m_notes->selectAll();
    }
}

void DiaryGrid::commitNotes()
{
    if (m_notes->isHidden() || !m_notes->isModified()) {
        return;
    }
    m_notes->setModified(false);
    const std::string text = m_notes->text().trimmed().toStdString();
    if (m_draft.sheet().place().field == DiaryField::pad) {
        answer(m_draft.write(tr("Pad of the skin mark"),
                             [&](DiarySheet& sheet) { return sheet.setPad(text); }));
    } else {
        answer(
            m_draft.write(tr("Remark"), [&](DiarySheet& sheet) { return sheet.setRemark(text); }));
    }
}

void DiaryGrid::answer(const DiaryAnswer& refusal)
{
    emit refused(refusal);
}

void DiaryGrid::write(const QString& verb, DiaryAnswer (DiarySheet::*act)())
{
    answer(m_draft.write(verb, [&](DiarySheet& sheet) { return (sheet.*act)(); }));
}

void DiaryGrid::move(const DiaryDraft::Act& act)
{
    commitNotes();
    answer(m_draft.move(act));
}

bool DiaryGrid::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        // Pages of the diary, not of the record.
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool pages = key->key() == Qt::Key_PageUp || key->key() == Qt::Key_PageDown;
        if (key->modifiers() == Qt::ControlModifier && (pages || key->key() == Qt::Key_D)) {
            event->accept();
            return true;
        }
    }
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const auto column = m_geometry.columnAt(help->pos().x());
        const auto row = m_geometry.rowAt(help->pos().y());
        QString tip;
        if (column && row) {
            const Date day =
                m_draft.sheet().form().startDate +
                std::chrono::days((m_geometry.firstWeek().number + *column - 1) * rows + *row);
            const WrittenDay& written = m_draft.sheet().diary().on(day);
            QStringList lines{m_text.longDate(day)};
            if (written.skin) {
                lines << tr("Skin: %1").arg(skinText(*written.skin));
            }
            if (!written.skinPad.empty()) {
                lines << QString::fromStdString(written.skinPad);
            }
            if (!written.remark.empty()) {
                lines << QString::fromStdString(written.remark);
            }
            tip = lines.join(QLatin1Char('\n'));
        }
        QToolTip::showText(help->globalPos(), tip, this);
        return true;
    }
    return QWidget::event(event);
}

bool DiaryGrid::focusNextPrevChild(bool next)
{
    bool stays = false;
    move([&](DiarySheet& sheet) {
        stays = sheet.nextField(next);
        return DiaryAnswer();
    });
    return stays || QWidget::focusNextPrevChild(next);
}

void DiaryGrid::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    const DiaryPicture picture{m_draft.sheet(), m_preview, m_lived, hasAnyFocus(),
                               visibleRegion().boundingRect().top()};
    const Tokens tokens = tokensOf(palette());
    DiaryPainter(painter, picture, m_geometry, tokens, m_text).paint();
}

void DiaryGrid::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    emit said(expectedText(m_draft.sheet(), m_text));
    if (!m_notes->isHidden() && !belongsToSession(m_draft.sheet().place().field) &&
        m_draft.sheet().place().field != DiaryField::skin) {
        m_notes->setFocus(Qt::OtherFocusReason);
    }
    update();
}

void DiaryGrid::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    update();
}

void DiaryGrid::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) {
        layOutWeeks();
    }
}

} // namespace quadrille::app
