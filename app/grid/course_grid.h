// SPDX-License-Identifier: GPL-3.0-or-later
// The grid as a plain value: columns are weeks, rows are weekdays, one square a day. Painters,
// widgets and print draw it; day_marks.h makes it.
#pragma once

#include "core/calendar.h"

#include <QString>

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace quadrille::app
{

/// What a square says of its day.
enum class DayState {
    blank,             ///< no day of the course: nothing is drawn
    notPrescribed,     ///< a dot
    toCome,            ///< an outline
    noDiaryYet,        ///< past and not copied: corners only
    done,              ///< filled
    partlyDone,        ///< filled from below to the share done
    missed,            ///< outline and one stroke
    doneNotPrescribed, ///< a disc
    paused,            ///< a dot, as where nothing is prescribed
};

/// How far a partly done square is filled.
enum class DoneShare { third, half, twoThirds };

/// One square.
struct DayMark {
    DayState state = DayState::blank;
    DoneShare share = DoneShare::half; ///< of a partly done day
    int sessionsPrescribed = 0;
    int sessionsDone = 0;
    int sessionsExtra = 0; ///< beyond what is prescribed
    bool skinMark = false;
    QString note; ///< a folded corner unless empty
    friend bool operator==(const DayMark&, const DayMark&) = default;
};

inline constexpr int daysInWeek = 7;
using WeekMarks = std::array<DayMark, daysInWeek>;

/// The head above the weeks of one block.
struct BlockSpan {
    CourseWeek first;
    int weeks = 1;
    std::size_t index = 0; ///< of the block in its plan
    QString name;          ///< "Block 2"
    QString shortName;     ///< "2", where the name does not fit
    bool isPause = false;  ///< weeks of the block in which the course stands still
    friend bool operator==(const BlockSpan&, const BlockSpan&) = default;
};

/// A course, or a window of some of its weeks.
struct CourseGrid {
    Date startDate;
    CourseWeek firstWeek; ///< the leftmost column
    std::vector<WeekMarks> weeks;
    std::array<QString, daysInWeek> weekdayNames; ///< from the weekday of the start date
    std::vector<BlockSpan> blocks;
    std::optional<CourseWeek> currentWeek = std::nullopt;  ///< none before the start
    std::optional<int> todayRow = std::nullopt;            ///< row of today within it, 0 … 6
    std::optional<std::size_t> chosenBlock = std::nullopt; ///< BlockSpan::index of the filled head
    friend bool operator==(const CourseGrid&, const CourseGrid&) = default;
};

/// The column of a week; nothing outside the window.
std::optional<int> columnOf(const CourseGrid& grid, CourseWeek week);
/// The day of a square.
Date dayAt(const CourseGrid& grid, int column, int row);
/// `weeks` columns from `first` on, fewer where the grid ends.
CourseGrid windowOf(const CourseGrid& grid, CourseWeek first, int weeks);

} // namespace quadrille::app
