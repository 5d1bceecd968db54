// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of courses.
#pragma once

#include "db/store.h"

#include "core/course.h"

#include <optional>
#include <vector>

namespace quadrille::db
{

/// A patient's courses, the latest first.
std::vector<Course> coursesOf(Reading& reading, PatientId patient);
std::optional<Course> course(Reading& reading, CourseId id);
/// Gives the course the patient's next number, whatever `course.number` says.
CourseId addCourse(Writing& writing, const Course& course);
void changeCourse(Writing& writing, const Course& course);

} // namespace quadrille::db
