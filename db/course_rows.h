// SPDX-License-Identifier: GPL-3.0-or-later
// A row of a course, for the repository and for the caseload.
#pragma once

#include "db/sql.h"

#include "core/course.h"
#include "core/ids.h"

#include <string>

namespace quadrille::db
{

/// In the order in which takeCourse reads them.
inline constexpr const char* courseColumns =
    "course.id, course.patient, course.number, course.problem, course.start_date, course.end_date, "
    "course.end_reason, course.agreed_return_date, course.treated_side, course.version";
Course takeCourse(Statement& row);

/// Whose course it is. Failure notFound when there is none.
PatientId patientOf(const Connection& connection, CourseId course);

/// The practitioner's name as it is today. Failure notFound when there is none.
std::string nameOfPractitioner(const Connection& connection, PractitionerId practitioner);

} // namespace quadrille::db
