// SPDX-License-Identifier: GPL-3.0-or-later
// Where everything of a diary page stands, in whole px: the head of each week, the days below it,
// in each a line a session and the line of the day.
#pragma once

#include "core/diary_sheet.h"

#include <QRect>
#include <QSize>

#include <array>
#include <cstddef>
#include <optional>

namespace quadrille::app
{

/// The square before the fields of a line, px at 100 %.
inline constexpr int diaryMarkSide = 22;

/// Weeks side by side from `first`, on the page of the place.
class DiaryGeometry
{
public:
    DiaryGeometry() = default;
    /// `width`: px to fill. `namesWidth`: of the widest weekday name.
    DiaryGeometry(const DiarySheet& sheet, CourseWeek first, int weeks, int width, int namesWidth,
                  double factor);

    /// So wide a week has to be at least, px.
    static int leastWeekWidth(const DiarySheet& sheet, double factor);

    CourseWeek firstWeek() const { return m_first; }
    int weeks() const { return m_weeks; }
    QSize size() const;
    /// The margin line stands right of the names.
    int marginX() const;
    QRect weekdayName(int row) const;
    QRect head(int column) const;
    QRect cell(int column, int row) const;
    QRect row(int row) const;
    /// A session of a day of that column.
    QRect line(int column, int row, int session) const;
    QRect mark(const QRect& line) const;
    /// One of `fields` fields side by side: minutes, amplitudes, comfort.
    QRect field(const QRect& line, int index, int fields) const;
    /// The last line of the day: skin, pad, remark.
    QRect dayLine(int column, int row, int lines) const;
    /// The square of one of the four answers.
    QRect skinAnswer(const QRect& dayLine, int answer) const;
    /// Pad and remark: behind all four answers, or behind the chosen one.
    QRect notes(const QRect& dayLine, bool withAnswers) const;
    std::optional<int> columnAt(int x) const;
    std::optional<int> rowAt(int y) const;

private:
    CourseWeek m_first;
    int m_weeks = 1;
    int m_names = 0;
    int m_weekWidth = 0;
    double m_factor = 1.0;
    std::array<int, 8> m_rowTops{}; ///< and the lower end of the last row
};

/// The fields of a line: minutes, an amplitude a site, comfort.
int fieldsOfLine(const DiaryFormDay& day);
/// The most fields that a day of the week has.
int fieldsOfWeek(const DiaryForm& form, CourseWeek week);

} // namespace quadrille::app
