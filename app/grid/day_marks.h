// SPDX-License-Identifier: GPL-3.0-or-later
// From course and plans to the grid's value.
#pragma once

#include "app/grid/course_grid.h"
#include "app/words/quantity_text.h"

#include "core/course.h"
#include "core/plan.h"

#include <vector>

namespace quadrille::app
{

/// The whole course: every week that a plan in force covers, the current week of a running course,
/// and at least four. Past days with a prescription are "no diary yet", today and later ones "to
/// come", all others "not prescribed"; in weeks with a number of days instead of weekdays every day
/// has an outline. Heads name the block of the plan in force at the week's end.
///
/// To see a draft in place, add a plan with the next number, its blocks and from-date.
CourseGrid courseGridOf(const Course& course, const std::vector<Plan>& plans, Date today,
                        const QuantityText& text);

/// The four weeks of a miniature: the current week rightmost, weeks before the start blank. A
/// course that has not begun shows its first weeks, an ended one its last.
CourseGrid miniatureOf(const Course& course, const std::vector<Plan>& plans, Date today,
                       const QuantityText& text);

} // namespace quadrille::app
