// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/diary_geometry.h"

#include "app/look/look.h"
#include "app/look/tokens.h"

#include <algorithm>

namespace quadrille::app
{

namespace
{

// px at 100 %.
constexpr int headHeight = 46;
constexpr int lineHeight = 30;
constexpr int dayLineHeight = 26;
constexpr int cellInset = 5; ///< above the first and below the last line
constexpr int restHeight = 56;
constexpr int sideInset = 8;
constexpr int fieldGap = 8;
constexpr int leastField = 38;
constexpr int mostField = 56;
constexpr int mostPitch = 88; ///< from field to field, where one week has all the room
constexpr int leastWeek = 200;
constexpr int skinWord = 30;
constexpr int skinPitch = size::hitArea;
constexpr int skinSide = 18;
constexpr int marginGap = 3;
constexpr int rows = 7;

int rowHeight(int lines)
{
    return lines == 0 ? restHeight : 2 * cellInset + lines * lineHeight + dayLineHeight;
}

} // namespace

int fieldsOfLine(const DiaryFormDay& day)
{
    return 2 + static_cast<int>(day.sites.size());
}

int fieldsOfWeek(const DiaryForm& form, CourseWeek week)
{
    int fields = 2;
    const Date first = firstDayOf(form.startDate, week);
    for (int row = 0; row < rows; ++row) {
        if (const DiaryFormDay* day = form.find(first + std::chrono::days(row))) {
            fields = std::max(fields, fieldsOfLine(*day));
        }
    }
    return fields;
}

DiaryGeometry::DiaryGeometry(const DiarySheet& sheet, CourseWeek first, int weeks, int width,
                             int namesWidth, double factor)
    : m_first(first)
    , m_weeks(weeks)
    , m_names(namesWidth + scaled(sideInset + marginGap, factor))
    , m_factor(factor)
{
    m_weekWidth = std::max(leastWeekWidth(sheet, factor), (width - m_names - 1) / m_weeks);
    m_rowTops[0] = scaled(headHeight, factor);
    const Date page = sheet.form().firstDayOfPage(sheet.page());
    for (int row = 0; row < rows; ++row) {
        int lines = 0; // of the whole page, so that no row grows when the weeks shown move
        for (int week = 0; week < weeksOfDiaryPage; ++week) {
            lines = std::max(lines, sheet.linesOf(page + std::chrono::days(week * rows + row)));
        }
        m_rowTops[static_cast<std::size_t>(row) + 1] =
            m_rowTops[static_cast<std::size_t>(row)] + scaled(rowHeight(lines), factor);
    }
}

int DiaryGeometry::leastWeekWidth(const DiarySheet& sheet, double factor)
{
    int fields = 2;
    const int firstWeek = sheet.page() * weeksOfDiaryPage + 1;
    for (int week = 0; week < weeksOfDiaryPage; ++week) {
        fields = std::max(fields, fieldsOfWeek(sheet.form(), {firstWeek + week}));
    }
    const int needed = 2 * sideInset + diaryMarkSide + fields * (leastField + fieldGap);
    return scaled(std::max(leastWeek, needed), factor);
}

QSize DiaryGeometry::size() const
{
    return {m_names + m_weeks * m_weekWidth + 1, m_rowTops.back() + 1};
}

int DiaryGeometry::marginX() const
{
    return m_names - scaled(marginGap, m_factor) - 1;
}

QRect DiaryGeometry::weekdayName(int row) const
{
    return {0, m_rowTops[static_cast<std::size_t>(row)], marginX() - scaled(sideInset, m_factor),
            scaled(lineHeight + 2 * cellInset, m_factor)};
}

QRect DiaryGeometry::head(int column) const
{
    return {m_names + column * m_weekWidth, 0, m_weekWidth, m_rowTops[0]};
}

QRect DiaryGeometry::cell(int column, int row) const
{
    const QRect band = this->row(row);
    return {m_names + column * m_weekWidth, band.top(), m_weekWidth, band.height()};
}

QRect DiaryGeometry::row(int row) const
{
    const auto index = static_cast<std::size_t>(row);
    return {0, m_rowTops[index], size().width(), m_rowTops[index + 1] - m_rowTops[index]};
}

QRect DiaryGeometry::line(int column, int row, int session) const
{
    const QRect box = cell(column, row);
    const int height = scaled(lineHeight, m_factor);
    const int inset = scaled(sideInset, m_factor);
    return {box.left() + inset, box.top() + scaled(cellInset, m_factor) + (session - 1) * height,
            box.width() - 2 * inset, height};
}

QRect DiaryGeometry::mark(const QRect& line) const
{
    const int side = scaled(diaryMarkSide, m_factor);
    return {line.left(), line.top() + (line.height() - side) / 2, side, side};
}

QRect DiaryGeometry::field(const QRect& line, int index, int fields) const
{
    const int gap = scaled(fieldGap, m_factor);
    const int left = line.left() + scaled(diaryMarkSide, m_factor) + gap;
    const int room = line.right() + 1 - left;
    const int width =
        fields > 1 ? std::min((room - gap * (fields - 1)) / fields, scaled(mostField, m_factor))
                   : room;
    // Spread over the line, so that the columns of all weeks are alike.
    const int pitch =
        fields > 1 ? std::min((room - width) / (fields - 1), scaled(mostPitch, m_factor)) : 0;
    const int inset = scaled(space::hair, m_factor);
    return {left + index * pitch, line.top() + inset, width, line.height() - 2 * inset};
}

QRect DiaryGeometry::dayLine(int column, int row, int lines) const
{
    const QRect first = line(column, row, lines + 1);
    const int height = scaled(dayLineHeight, m_factor);
    // A rest day is lower than a day with a session.
    const int lowest = cell(column, row).bottom() - height;
    return {first.left(), std::min(first.top(), lowest), first.width(), height};
}

QRect DiaryGeometry::skinAnswer(const QRect& dayLine, int answer) const
{
    const int side = scaled(skinSide, m_factor);
    const int left = dayLine.left() + scaled(skinWord, m_factor) +
                     answer * scaled(skinPitch, m_factor) +
                     (scaled(skinPitch, m_factor) - side) / 2;
    return {left, dayLine.top() + (dayLine.height() - side) / 2, side, side};
}

QRect DiaryGeometry::notes(const QRect& dayLine, bool withAnswers) const
{
    const int left =
        skinAnswer(dayLine, withAnswers ? 3 : 0).right() + scaled(space::small, m_factor);
    return {left, dayLine.top(), dayLine.right() + 1 - left, dayLine.height()};
}

std::optional<int> DiaryGeometry::columnAt(int x) const
{
    const int column = x < m_names || m_weekWidth == 0 ? -1 : (x - m_names) / m_weekWidth;
    return column >= 0 && column < m_weeks ? std::optional(column) : std::nullopt;
}

std::optional<int> DiaryGeometry::rowAt(int y) const
{
    for (int row = 0; row < rows; ++row) {
        if (this->row(row).contains(QPoint(0, y))) {
            return row;
        }
    }
    return std::nullopt;
}

} // namespace quadrille::app
