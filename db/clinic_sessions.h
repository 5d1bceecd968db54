// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of the sessions held in the clinic.
#pragma once

#include "db/store.h"

#include "core/clinic_session.h"

#include <vector>

namespace quadrille::db
{

/// All of a course, withdrawn ones too, the earliest first.
std::vector<ClinicSession> clinicSessionsOf(Reading& reading, CourseId course);
/// Written once. The practitioner's name is looked up. `today`: the day in the clinic, for the
/// screening's term. Errors: notFilled (no practitioner), notFound (course, practitioner),
/// refused (no site), outOfRange, and those of the screening gate (core/screening_gate.h) while it
/// is shut for one of the sites.
ClinicSessionId addClinicSession(Writing& writing, const ClinicSession& session, Date today);
/// Takes back an entry made by mistake, over the version that was read. Errors: changedElsewhere,
/// notFound.
void withdrawClinicSession(Writing& writing, ClinicSessionId session, Version read);

} // namespace quadrille::db
