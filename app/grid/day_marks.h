// SPDX-License-Identifier: GPL-3.0-or-later
// From what is on record of a course to the grid's value.
#pragma once

#include "app/grid/course_grid.h"
#include "app/words/quantity_text.h"

#include "core/course.h"
#include "core/lived_days.h"
#include "core/plan.h"

#include <vector>

namespace quadrille::app
{

/// What the grid is made from. `records` may lack the settings of its plans: then any minutes make
/// a session done.
struct GridSource {
    CourseRecords records;
    AdherenceRules rules = {};
    Date today;
};

/// The whole course: every week that a plan in force covers, the current week of a running course,
/// and at least four. How each day stands says core/lived_days.h. Heads name the block of the plan
/// in force at the week's end; weeks that are wholly paused are headed as such.
///
/// To see a draft in place, add a plan with the next number, its blocks and from-date.
CourseGrid courseGridOf(const GridSource& source, const QuantityText& text);
/// The same where nothing but the plans is known.
CourseGrid courseGridOf(const Course& course, const std::vector<Plan>& plans, Date today,
                        const QuantityText& text);

/// The four weeks of a miniature: the current week rightmost, weeks before the start blank. A
/// course that has not begun shows its first weeks, an ended one its last.
CourseGrid miniatureOf(const GridSource& source, const QuantityText& text);
/// The same where nothing but the plans is known.
CourseGrid miniatureOf(const Course& course, const std::vector<Plan>& plans, Date today,
                       const QuantityText& text);

} // namespace quadrille::app
