// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/course_rows.h"

#include "db/codec.h"
#include "db/failure.h"

namespace quadrille::db
{

Course takeCourse(Statement& row)
{
    Course course;
    course.id = takeId<Course>(row);
    course.patient = takeId<Patient>(row);
    course.number = takeInt(row);
    course.problem = row.takeText();
    course.startDate = takeDate(row);
    course.endDate = takeOptionalDate(row);
    course.endReason = row.takeText();
    course.agreedReturnDate = takeOptionalDate(row);
    course.treatedSide = takeOptionalChoice<TreatedSide>(row);
    course.version = takeInt(row);
    return course;
}

PatientId patientOf(const Connection& connection, CourseId course)
{
    const auto patient =
        numberFrom(connection, "SELECT patient FROM course WHERE id = ?", {valueOf(course)});
    if (!patient) {
        throw Failure({.code = ErrorCode::notFound, .subject = "course", .detail = {}});
    }
    return PatientId(*patient);
}

std::string nameOfPractitioner(const Connection& connection, PractitionerId practitioner)
{
    Statement row(connection, "SELECT name FROM practitioner WHERE id = ?");
    row.bind({valueOf(practitioner)});
    if (!row.next()) {
        throw Failure({.code = ErrorCode::notFound, .subject = "practitioner", .detail = {}});
    }
    return row.takeText();
}

} // namespace quadrille::db
