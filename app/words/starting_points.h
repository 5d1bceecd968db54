// SPDX-License-Identifier: GPL-3.0-or-later
// The published starting points, which stand in resources/starting_points, and how one is found.
#pragma once

#include "core/result.h"
#include "core/starting_point.h"

#include <QByteArray>
#include <QString>

#include <vector>

namespace quadrille::app
{

/// Reads starting points from JSON. Frequencies stand there in Hz, times in s, phase durations in
/// µs, sessions in min; a range is a list of two; a cell without a standing has that of its row.
/// Error badFormat with what is wrong in `detail`: a key or word that there is not, a figure that
/// is no whole number of base units, a doubtful one that is given all the same, a name that stands
/// twice.
Result<std::vector<StartingPoint>> startingPointsFrom(const QByteArray& json);
/// Those of this version of the program.
std::vector<StartingPoint> publishedStartingPoints();

/// Whether a starting point is for what is asked: some of its words begin in the text, or the text
/// is the beginning of some of its words. Accents and capitals do not count. Empty asks for
/// nothing.
bool isForMuscle(const StartingPoint& point, const QString& text);
bool isForCondition(const StartingPoint& point, const QString& text);

} // namespace quadrille::app
