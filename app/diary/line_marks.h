// SPDX-License-Identifier: GPL-3.0-or-later
// The square of each line of a day, as the grid would draw it.
#pragma once

#include "app/grid/course_grid.h"

#include "core/lived_days.h"

#include <vector>

namespace quadrille::app
{

/// A mark for each of `lines` sessions of a day, by session number. Reported sessions stand as they
/// count; those without a report as the rest of the day does.
std::vector<DayMark> lineMarks(const LivedDay* day, const std::vector<DiaryEntry>& entries,
                               int lines);

} // namespace quadrille::app
