// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of screenings. A signed screening and a reason for going ahead are never changed, here
// or in the database (triggers refuse both); a change makes the next, unsigned screening.
#pragma once

#include "db/store.h"

#include "core/screening.h"

#include <vector>

namespace quadrille::db
{

/// All of a course, the earliest first.
std::vector<Screening> screeningsOf(Reading& reading, CourseId course);
/// Adds an unsigned screening; it gets the course's next number.
ScreeningId addScreening(Writing& writing, const Screening& screening);
/// Changes the answers of an unsigned one. Errors: changedElsewhere, notFound, refused.
void changeScreening(Writing& writing, const Screening& screening);
/// Signs what is stored under the version that was read. Error refused when nothing is answered or
/// a yes has no note; changedElsewhere.
void signScreening(Writing& writing, ScreeningId screening, Version read,
                   PractitionerId practitioner, Date day);

std::vector<ScreeningOverride> overridesOf(Reading& reading, ScreeningId screening);
/// Who and when are filled in: `practitioner` names who answers for it.
ScreeningOverrideId addOverride(Writing& writing, const ScreeningOverride& reason);

} // namespace quadrille::db
