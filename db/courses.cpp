// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/courses.h"

#include "db/caseload_key.h"
#include "db/change_record.h"
#include "db/codec.h"
#include "db/course_rows.h"
#include "db/failure.h"
#include "db/versions.h"

namespace quadrille::db
{

namespace
{

Columns columnsOf(const Course& course)
{
    return {
        {"problem", valueOf(course.problem)},
        {"start_date", valueOf(course.startDate)},
        {"end_date", valueOf(course.endDate)},
        {"end_reason", valueOf(course.endReason)},
        {"agreed_return_date", valueOf(course.agreedReturnDate)},
        {"treated_side", valueOf(course.treatedSide)},
    };
}

Record recordOf(CourseId id, const std::optional<PatientId>& patient)
{
    return {.kind = "course", .id = id.key(), .patient = patient};
}

} // namespace

std::vector<Course> coursesOf(Reading& reading, PatientId patient)
{
    std::vector<Course> courses;
    Statement rows(reading.connection(),
                   std::string("SELECT ") + courseColumns +
                       " FROM course WHERE patient = ? ORDER BY start_date DESC, number DESC");
    rows.bind({valueOf(patient)});
    while (rows.next()) {
        courses.push_back(takeCourse(rows));
    }
    return courses;
}

std::optional<Course> course(Reading& reading, CourseId id)
{
    Statement row(reading.connection(),
                  std::string("SELECT ") + courseColumns + " FROM course WHERE id = ?");
    row.bind({valueOf(id)});
    return row.next() ? std::optional(takeCourse(row)) : std::nullopt;
}

CourseId addCourse(Writing& writing, const Course& course)
{
    requireFilled(course.problem, Field::problem);
    const Connection& connection = writing.connection();
    if (!course.patient ||
        !numberFrom(connection, "SELECT id FROM patient WHERE id = ?", {valueOf(course.patient)})) {
        throw Failure({.code = ErrorCode::notFound, .subject = "patient", .detail = {}});
    }
    const auto last = numberFrom(connection, "SELECT max(number) FROM course WHERE patient = ?",
                                 {valueOf(course.patient)});
    Columns columns = columnsOf(course);
    append(columns,
           {{"patient", valueOf(course.patient)}, {"number", valueOf(last.value_or(0) + 1)}});
    const CourseId id(insertRow(connection, "course", columns));
    recordCreated(writing, recordOf(id, course.patient));
    refreshCaseloadKey(connection, *course.patient);
    return id;
}

void changeCourse(Writing& writing, const Course& changed)
{
    const auto before = changed.id ? course(writing, *changed.id) : std::nullopt;
    if (!before) {
        throw Failure({.code = ErrorCode::notFound, .subject = changed.problem, .detail = {}});
    }
    if (changed.patient != before->patient || changed.number != before->number) {
        throw Failure({.code = ErrorCode::refused,
                       .subject = changed.problem,
                       .detail = "a course keeps its patient and its number"});
    }
    requireFilled(changed.problem, Field::problem);
    saveOver(writing, recordOf(*changed.id, before->patient), changed.version, columnsOf(*before),
             columnsOf(changed));
    refreshCaseloadKey(writing.connection(), *before->patient);
}

} // namespace quadrille::db
