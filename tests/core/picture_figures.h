// SPDX-License-Identifier: GPL-3.0-or-later
// The figures that a picture of weeks can ask for, written as a person would write them:
//
//     = sessions 5 of 6          session adherence
//     = minutes 110 of 120       dose adherence, the same for contractions and "on time" (seconds)
//     = missed 1                 the same for partly, "not known", "to come"
//     = over-use 1 session 25 min
//     = gap 3 days
//     = weeks 1 of 2             weeks at or above the threshold, of those fully known
//     = trend +16.7              percentage points
//     = last 7 days 3            sessions delivered; the same for "last 14 days"
//     = known 14 days 6 of 10    session adherence; the same for "since visit"
//     = week 2 3 of 5            likewise of a week, and of the n-th block: "block 1"
//     = day Mon 2026-03-02 partly
//
// "none" where there is no such figure.
#pragma once

#include "tests/core/week_picture.h"

#include <optional>
#include <string>

namespace quadrille::test
{

/// Throws std::invalid_argument for a name that is not in the list.
std::string figureText(const Adherence& adherence, const CourseAsLived& lived,
                       const std::string& name);

/// Cuts "sessions 5 of 6" into name and value; nothing when the name is not in the list.
std::optional<ExpectedFigure> expectedFigureFrom(const std::string& text);

/// Reads a picture and holds core's days and figures against it.
void expectPicture(const std::string& text);

} // namespace quadrille::test
