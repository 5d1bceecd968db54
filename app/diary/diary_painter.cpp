// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/diary_painter.h"

#include "app/diary/diary_words.h"
#include "app/diary/line_marks.h"
#include "app/grid/mark_painter.h"
#include "app/look/look.h"
#include "app/look/shapes.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int rows = 7;
constexpr int skinAnswers = 4;

Date dayOf(const DiarySheet& sheet, CourseWeek week, int row)
{
    return firstDayOf(sheet.form().startDate, week) + std::chrono::days(row);
}

} // namespace

DiaryPainter::DiaryPainter(QPainter& painter, const DiaryPicture& picture,
                           const DiaryGeometry& geometry, const Tokens& tokens,
                           const QuantityText& text)
    : m_painter(painter)
    , m_picture(picture)
    , m_sheet(picture.sheet)
    , m_geometry(geometry)
    , m_tokens(tokens)
    , m_text(text)
    , m_plain(fontOf(TextStyle::text, appliedFactor()))
    , m_strong(fontOf(TextStyle::strong, appliedFactor()))
    , m_small(fontOf(TextStyle::axis, appliedFactor()))
{
}

void DiaryPainter::paint()
{
    for (int column = 0; column < m_geometry.weeks(); ++column) {
        for (int row = 0; row < rows; ++row) {
            paintCell(column, row);
        }
    }
    paintRowNames();
    paintLattice();
    const int top = std::max(0, m_picture.visibleTop);
    m_painter.translate(0, top);
    const QRect first = m_geometry.head(0);
    m_painter.fillRect(QRect(0, 0, first.left(), first.height()), m_tokens.desk);
    for (int column = 0; column < m_geometry.weeks(); ++column) {
        paintHead(column);
    }
    m_painter.translate(0, -top);
}

bool DiaryPainter::isPlace(const DiaryPlace& place) const
{
    const DiaryPlace& here = m_sheet.place();
    return here.day == place.day && here.field == place.field && here.site == place.site &&
           (!belongsToSession(place.field) || here.session == place.session);
}

QColor DiaryPainter::ground(int column, int row) const
{
    const DiaryPlace& here = m_sheet.place();
    const CourseWeek week{m_geometry.firstWeek().number + column};
    const bool sameWeek = courseWeekOf(m_sheet.form().startDate, here.day) == week;
    const bool sameRow = (here.day - m_sheet.form().startDate).count() % rows == row;
    const Date day = dayOf(m_sheet, week, std::max(row, 0));
    const DiaryRun run = m_sheet.run();
    const bool marked = m_sheet.isMarked() && row >= 0 && run.from <= day && day <= run.to;
    const bool byWeek = sameWeek && m_geometry.weeks() > 1;
    return marked ? m_tokens.changed : (byWeek || sameRow) ? m_tokens.tint : m_tokens.sheet;
}

QString DiaryPainter::captionOf(const DiaryForm& form, CourseWeek week) const
{
    const Date first = firstDayOf(form.startDate, week);
    int sessions = 0;
    std::optional<Milliseconds> length;
    for (int row = 0; row < rows; ++row) {
        const DiaryFormDay* day = form.find(first + std::chrono::days(row));
        if (day != nullptr && day->sessions > sessions) {
            sessions = day->sessions;
            length = day->length;
        }
    }
    if (sessions == 0) {
        return tr("nothing prescribed");
    }
    return length
               ? tr("%1 × %2", "sessions a day, minutes")
                     .arg(QString::number(sessions), minutesNumber(*length, m_text) +
                                                         noBreakSpace() + unitSymbol(Unit::minute))
               : tr("%1 a day", "sessions").arg(sessions);
}

void DiaryPainter::paintHead(int column)
{
    const QRect head = m_geometry.head(column);
    const CourseWeek week{m_geometry.firstWeek().number + column};
    const DiaryForm& form = m_sheet.form();
    m_painter.fillRect(head, ground(column, -1));
    const int inset = scaled(space::close, appliedFactor());
    const QRect upper = head.adjusted(inset, 0, -inset, -head.height() / 2);
    const QString name = tr("Week %1").arg(week.number);
    m_painter.setFont(m_strong);
    m_painter.setPen(m_tokens.ink);
    m_painter.drawText(upper, Qt::AlignLeft | Qt::AlignVCenter, name);
    const int nameWidth = QFontMetrics(m_strong).horizontalAdvance(name) + inset;
    m_painter.setFont(m_small);
    m_painter.setPen(m_tokens.ink2);
    const Date first = dayOf(m_sheet, week, 0);
    const QString days =
        tr("%1 – %2", "days")
            .arg(m_text.dayAndMonth(first), m_text.dayAndMonth(first + std::chrono::days(6)));
    const QString caption = captionOf(form, week);
    const QFontMetrics small(m_small);
    m_painter.drawText(upper, Qt::AlignRight | Qt::AlignVCenter, caption);
    if (nameWidth + small.horizontalAdvance(days) + inset + small.horizontalAdvance(caption) <=
        upper.width()) {
        m_painter.drawText(upper.adjusted(nameWidth, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                           days);
    }
    const QRect line = m_geometry.line(column, 0, 1);
    const int fields = fieldsOfWeek(form, week);
    QStringList captions{tr("min")};
    const DiaryFormDay* day = nullptr;
    for (int row = 0; row < rows && (day == nullptr || fieldsOfLine(*day) < fields); ++row) {
        day = form.find(dayOf(m_sheet, week, row));
    }
    if (day != nullptr) {
        for (const DiarySite& site : day->sites) {
            captions << (day->sites.size() == 1 ? tr("mA") : tr("mA %1").arg(site.channel));
        }
    }
    captions << tr("0–10");
    for (int i = 0; i < static_cast<int>(captions.size()); ++i) {
        QRect box = m_geometry.field(line, i, fields);
        box.setTop(head.top() + head.height() / 2);
        box.setBottom(head.bottom());
        m_painter.drawText(box.adjusted(-inset, 0, inset, 0), Qt::AlignCenter, captions[i]);
    }
    m_painter.fillRect(QRect(head.left(), head.top(), head.width() + 1, stroke::line),
                       m_tokens.line);
    m_painter.fillRect(QRect(head.left(), head.bottom(), head.width() + 1, stroke::line),
                       m_tokens.line);
    for (const int x : {head.left(), head.right() + 1}) {
        m_painter.fillRect(QRect(x, head.top(), stroke::line, head.height()), m_tokens.line);
    }
}

void DiaryPainter::paintRowNames()
{
    const Date first = m_sheet.form().startDate;
    const auto placeRow = (m_sheet.place().day - first).count() % rows;
    for (int row = 0; row < rows; ++row) {
        m_painter.setFont(row == placeRow ? m_strong : m_plain);
        m_painter.setPen(row == placeRow ? m_tokens.ink : m_tokens.ink2);
        m_painter.drawText(m_geometry.weekdayName(row), Qt::AlignRight | Qt::AlignVCenter,
                           m_text.shortWeekday(Weekday(first + std::chrono::days(row))));
    }
}

void DiaryPainter::paintCell(int column, int row)
{
    const QRect cell = m_geometry.cell(column, row);
    const Date date = dayOf(m_sheet, {m_geometry.firstWeek().number + column}, row);
    m_ground = ground(column, row);
    m_painter.fillRect(cell, m_ground);
    const DiaryFormDay* day = m_sheet.form().find(date);
    if (day == nullptr) {
        return;
    }
    const int lines = m_sheet.linesOf(date);
    m_marks = lineMarks(m_picture.lived.find(date), m_picture.preview.entries, lines);
    m_remarks = remarksOn(m_sheet.form(), date, m_sheet.diary().on(date));
    for (int session = 1; session <= lines; ++session) {
        paintLine(m_geometry.line(column, row, session), *day, session);
    }
    const WrittenDay& written = m_sheet.diary().on(date);
    const bool isHere = m_sheet.place().day == date;
    if (lines == 0) {
        const QRect line = m_geometry.line(column, row, 1);
        paintMark(m_painter, m_geometry.mark(line),
                  DayMark{.state = DayState::notPrescribed, .note = {}}, m_tokens, m_ground,
                  MarkDetail::full);
        m_painter.setFont(m_plain);
        m_painter.setPen(m_tokens.ink3);
        m_painter.drawText(m_geometry.field(line, 0, 1), Qt::AlignLeft | Qt::AlignVCenter,
                           !day->isOfCourse ? tr("ended")
                           : day->isPaused  ? tr("pause")
                                            : tr("rest day"));
    }
    if (lines > 0 || isHere || written.skin || !written.remark.empty()) {
        paintDayLine(m_geometry.dayLine(column, row, std::max(1, lines)), *day);
    }
}

void DiaryPainter::paintLine(const QRect& line, const DiaryFormDay& day, int session)
{
    const auto& sessions = m_sheet.diary().on(day.day).sessions;
    const auto found = sessions.find(session);
    const WrittenSession written = found != sessions.end() ? found->second : WrittenSession();
    const QRect square = m_geometry.mark(line);
    paintMark(m_painter, square, m_marks[static_cast<std::size_t>(session) - 1], m_tokens, m_ground,
              MarkDetail::full);
    const int fields = fieldsOfLine(day);
    const bool isHere = m_sheet.place().day == day.day && m_sheet.place().session == session &&
                        belongsToSession(m_sheet.place().field);
    if (written.time == Milliseconds(0) && written.amplitudes.empty() && !written.comfort &&
        !isHere) {
        m_painter.setFont(m_plain);
        m_painter.setPen(m_tokens.miss);
        m_painter.drawText(m_geometry.field(line, 0, 1).adjusted(0, 0, line.width(), 0),
                           Qt::AlignLeft | Qt::AlignVCenter, tr("not done"));
        return;
    }
    const auto offered = m_sheet.offeredIn(day.day, session);
    paintField(m_geometry.field(line, 0, fields), {.day = day.day, .session = session},
               written.time ? minutesNumber(*written.time, m_text) : QString(),
               offered ? minutesNumber(*offered, m_text) : QString());
    for (std::size_t i = 0; i < day.sites.size(); ++i) {
        const auto amplitude = written.amplitudes.find(day.sites[i].key);
        paintField(m_geometry.field(line, 1 + static_cast<int>(i), fields),
                   {day.day, session, DiaryField::amplitude, i},
                   amplitude != written.amplitudes.end()
                       ? amplitudeNumber(amplitude->second, m_text)
                       : QString(),
                   {});
    }
    paintField(m_geometry.field(line, fields - 1, fields),
               {day.day, session, DiaryField::comfort, 0},
               written.comfort ? m_text.count(*written.comfort) : QString(), {});
}

void DiaryPainter::paintField(const QRect& box, const DiaryPlace& place, const QString& written,
                              const QString& offered)
{
    const bool isHere = m_picture.hasFocus && isPlace(place);
    const auto remark = std::ranges::find(m_remarks, place, &DiaryRemark::place);
    const bool isWrong = remark != m_remarks.end();
    if (isHere || isWrong) {
        drawBox(m_painter, box, m_tokens.sheet, isHere ? m_tokens.mark : m_tokens.warnLine,
                stroke::focus, stroke::cornerRadius);
    } else {
        m_painter.fillRect(QRect(box.left(), box.bottom() - 2, box.width(), stroke::line),
                           m_tokens.edge);
    }
    QFont font = isHere ? m_strong : m_plain;
    QString shown = written;
    if (isHere && m_sheet.isTouched()) {
        shown = QString::fromStdString(m_sheet.typed());
        shown.replace(QLatin1Char('.'), m_text.locale().decimalPoint());
        shown += QLatin1Char('|');
    }
    m_painter.setPen(isWrong && !isHere ? m_tokens.warnInk : m_tokens.ink);
    if (isWrong && m_tokens.scheme == Scheme::dark) {
        m_painter.setPen(m_tokens.ink);
    }
    if (shown.isEmpty() && !offered.isEmpty()) {
        font.setItalic(true);
        m_painter.setPen(m_tokens.ink3);
        shown = offered;
    }
    m_painter.setFont(font);
    m_painter.drawText(box, Qt::AlignCenter, shown);
}

void DiaryPainter::paintDayLine(const QRect& line, const DiaryFormDay& day)
{
    const DiaryPlace& here = m_sheet.place();
    const bool withAnswers = here.day == day.day && here.field == DiaryField::skin;
    const WrittenDay& written = m_sheet.diary().on(day.day);
    paintSkin(line, day, withAnswers);
    const QRect notes = m_geometry.notes(line, withAnswers);
    QStringList parts;
    if (!written.skinPad.empty()) {
        parts << QString::fromStdString(written.skinPad);
    }
    if (!written.remark.empty()) {
        parts << QString::fromStdString(written.remark);
    }
    QFont font = m_small;
    font.setItalic(!parts.isEmpty());
    m_painter.setFont(font);
    m_painter.setPen(parts.isEmpty() ? m_tokens.ink3 : m_tokens.ink);
    QString text = parts.join(QStringLiteral(" · "));
    if (text.isEmpty() && here.day == day.day && m_picture.hasFocus && !withAnswers) {
        text = tr("S skin, N note");
    }
    m_painter.drawText(notes, Qt::AlignLeft | Qt::AlignVCenter,
                       QFontMetrics(font).elidedText(text, Qt::ElideRight, notes.width()));
}

void DiaryPainter::paintSkin(const QRect& line, const DiaryFormDay& day, bool withAnswers)
{
    const auto& skin = m_sheet.diary().on(day.day).skin;
    m_painter.setFont(m_small);
    m_painter.setPen(m_tokens.ink2);
    m_painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter, tr("skin"));
    const int chosen = skin ? static_cast<int>(*skin) : -1;
    if (!withAnswers) {
        paintSkinAnswer(m_geometry.skinAnswer(line, 0), chosen, chosen >= 0);
        return;
    }
    for (int answer = 0; answer < skinAnswers; ++answer) {
        paintSkinAnswer(m_geometry.skinAnswer(line, answer), answer, answer == chosen);
    }
    if (m_picture.hasFocus) {
        const int gap = scaled(space::hair, appliedFactor());
        const QRect ring = m_geometry.skinAnswer(line, 0).united(m_geometry.skinAnswer(line, 3));
        drawBox(m_painter, ring.adjusted(-gap * 2, -gap, gap * 2, gap), QColor(), m_tokens.mark,
                stroke::focus, stroke::cornerRadius);
    }
}

void DiaryPainter::paintSkinAnswer(const QRect& box, int answer, bool chosen)
{
    const bool isMark = answer >= static_cast<int>(Skin::thereNextDay);
    const QColor colour = isMark ? m_tokens.hazard : m_tokens.mark;
    drawBox(m_painter, box, chosen ? colour : m_tokens.sheet, chosen ? colour : m_tokens.edge,
            stroke::line, 0);
    if (answer >= 0) {
        m_painter.setFont(chosen ? m_strong : m_small);
        m_painter.setPen(chosen ? (isMark ? m_tokens.sheet : m_tokens.onMark) : m_tokens.ink2);
        m_painter.drawText(box, Qt::AlignCenter, QString::number(answer));
    }
}

void DiaryPainter::paintLattice()
{
    const QSize size = m_geometry.size();
    const int left = m_geometry.head(0).left();
    const int bottom = size.height() - 1;
    m_painter.fillRect(QRect(left, 0, size.width() - left, stroke::line), m_tokens.line);
    for (int row = 0; row < rows; ++row) {
        m_painter.fillRect(
            QRect(left, m_geometry.row(row).top(), size.width() - left, stroke::line),
            row == 0 ? m_tokens.line : m_tokens.rule);
    }
    m_painter.fillRect(QRect(left, bottom, size.width() - left, stroke::line), m_tokens.line);
    for (int column = 0; column <= m_geometry.weeks(); ++column) {
        const int x =
            column < m_geometry.weeks() ? m_geometry.head(column).left() : size.width() - 1;
        m_painter.fillRect(QRect(x, 0, stroke::line, size.height()), m_tokens.line);
    }
    const int top = m_geometry.row(0).top();
    m_painter.fillRect(QRect(m_geometry.marginX(), top, stroke::line, size.height() - top),
                       m_tokens.margin);
    const DiaryPlace& here = m_sheet.place();
    const auto week = courseWeekOf(m_sheet.form().startDate, here.day);
    if (m_picture.hasFocus && week) {
        const int column = week->number - m_geometry.firstWeek().number;
        if (column >= 0 && column < m_geometry.weeks()) {
            const auto row = static_cast<int>((here.day - m_sheet.form().startDate).count() % rows);
            drawBox(m_painter, m_geometry.cell(column, row).adjusted(0, 0, 1, 1), QColor(),
                    m_tokens.mark, stroke::focus, 0);
        }
    }
}

} // namespace quadrille::app
