// SPDX-License-Identifier: GPL-3.0-or-later
// A square in words: for tooltips and for a voice.
#pragma once

#include "app/grid/course_grid.h"
#include "app/grid/grid_geometry.h"
#include "app/words/quantity_text.h"

#include <QString>

namespace quadrille::app
{

/// "Tuesday 3 March 2026, week 4: 2 of 2 Sessions done, skin mark, note: red under lower pad".
QString spokenDay(const CourseGrid& grid, GridPlace place, const QuantityText& text);

} // namespace quadrille::app
