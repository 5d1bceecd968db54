// SPDX-License-Identifier: GPL-3.0-or-later
// A course written down as a physiotherapist would on squared paper, to be checked by eye:
//
//     start Mon 2026-03-02
//     plan 1 from Mon 2026-03-02: 2 weeks Mon Wed Fri, 20 min
//     received Sun 2026-03-08
//     today Wed 2026-03-11
//     week 1 2
//     Mon  D ?
//     Tue  . .
//     Wed  p o
//     Thu  x .
//     Fri  m o
//     Sat  . .
//     Sun  . .
//     = sessions 1 of 3
//     = minutes 30 of 60
//
// Columns are weeks, rows weekdays. D done, p partly, m missed, ? not known yet, o to come, x
// extra, z paused, . nothing prescribed. A day with several sessions has a letter for each, those
// reported first. D and x stand in the diary with the prescribed minutes (x: 20 where nothing is),
// p with half of them; the other letters are only expected. A day with a line of its own,
//
//     entry Mon 2026-03-02: 17 min, 60 contractions
//
// has just the entries so given. All blocks have 4 s on and 12 s off, 75 contractions and 300 s on
// time in 20 min. Other lines, as many as needed:
//
//     plan 2 from Mon 2026-03-16: 1 weeks daily, 2 times a day, 30 min; 3 weeks 3 days a week, …
//                                              blocks follow one another, in one line
//     …, 10 min, 2 sites in turn               or: 2 sites at once; alike
//     pause Tue 2026-03-10 to Thu 2026-03-12   without "to": until further notice
//     ends Fri 2026-03-20
//     visit Mon 2026-03-09
//     days Mon 2026-03-02 to Sun 2026-03-15    which days are counted; else all that are drawn
//
// What "=" can ask for says picture_figures.h.
#pragma once

#include "core/adherence.h"

#include <string>
#include <vector>

namespace quadrille::test
{

/// A figure and what is expected of it, both as text: "sessions", "1 of 3".
struct ExpectedFigure {
    std::string name;
    std::string value;
    friend bool operator==(const ExpectedFigure&, const ExpectedFigure&) = default;
};

struct WeekPicture {
    CourseRecords records;
    Date asOf;
    DateInterval interval;
    int weeks = 0;       ///< drawn
    std::string squares; ///< as drawWeeks() draws them
    std::vector<ExpectedFigure> expected;
};

/// Throws std::invalid_argument with the line that is not understood: an unknown word, a weekday
/// that the date does not have, rows in another order, a row of another length.
WeekPicture readPicture(const std::string& text);

/// The first weeks of a course in the letters above: "Mon D ?\nTue . .\n …"
std::string drawWeeks(const CourseAsLived& course, int weeks);

} // namespace quadrille::test
