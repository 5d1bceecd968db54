// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of the pads handed out in a course. One that was entered by mistake is changed to
// withdrawn; one that is worn is taken out of use on a day.
#pragma once

#include "db/store.h"

#include "core/electrode_set.h"

#include <vector>

namespace quadrille::db
{

/// All of a course, withdrawn ones too, the earliest first.
std::vector<ElectrodeSet> electrodeSetsOf(Reading& reading, CourseId course);
/// Errors: notFound without a course; outOfRange.
ElectrodeSetId addElectrodeSet(Writing& writing, const ElectrodeSet& set);
/// Errors: changedElsewhere, notFound, refused (a record keeps its course), outOfRange.
void changeElectrodeSet(Writing& writing, const ElectrodeSet& set);

} // namespace quadrille::db
