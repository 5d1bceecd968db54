// SPDX-License-Identifier: GPL-3.0-or-later
// A row of a course, for the repository and for the caseload.
#pragma once

#include "db/sql.h"

#include "core/course.h"
#include "core/ids.h"

namespace quadrille::db
{

/// In the order in which takeCourse reads them.
inline constexpr const char* courseColumns =
    "course.id, course.patient, course.number, course.problem, course.start_date, course.end_date";
Course takeCourse(Statement& row);

/// Whose course it is. Failure notFound when there is none.
PatientId patientOf(const Connection& connection, CourseId course);

} // namespace quadrille::db
