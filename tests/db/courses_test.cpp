// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/courses.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using tests::author;
using tests::codeOf;
using tests::day;
using tests::must;

class Courses : public testing::Test
{
protected:
    Courses()
        : patient(must(store->write(author(), "add patient", [](Writing& writing) {
            return addPatient(writing, tests::aPatient());
        })))
    {
    }
    Result<CourseId> add(const Course& course)
    {
        return store->write(author(), "add course",
                            [&](Writing& writing) { return addCourse(writing, course); });
    }
    Result<void> change(const Course& course)
    {
        return store->write(author(), "change course",
                            [&](Writing& writing) { changeCourse(writing, course); });
    }
    std::vector<Course> read()
    {
        return must(store->read([&](Reading& reading) { return coursesOf(reading, patient); }));
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    PatientId patient;
};

TEST_F(Courses, AreNumberedWithinThePatientWhateverTheNumberGiven)
{
    Course first = tests::aCourse(patient);
    first.number = 9;
    Course second{.patient = patient,
                  .problem = "Frailty",
                  .startDate = day(2025, 10, 1),
                  .endDate = day(2026, 1, 10)};
    first.id = must(add(first));
    second.id = must(add(second));
    first.number = 1;
    second.number = 2;
    EXPECT_THAT(read(), testing::ElementsAre(first, second)); // the later start first
    EXPECT_EQ(must(store->read([&](Reading& reading) { return course(reading, *second.id); })),
              second);
}

TEST_F(Courses, EachPatientCountsFromOne)
{
    must(add(tests::aCourse(patient)));
    const PatientId other = must(store->write(author(), "add patient", [](Writing& writing) {
        return addPatient(writing, tests::aPatient("1002", "Desmond Achterby"));
    }));
    const CourseId id = must(add(tests::aCourse(other)));
    EXPECT_EQ(must(store->read([&](Reading& reading) { return course(reading, id); }))->number, 1);
}

TEST_F(Courses, AnEndIsEnteredAndTakenBack)
{
    Course knee = tests::aCourse(patient);
    knee.id = must(add(knee));
    for (const std::optional<Date> end : {std::optional(day(2026, 3, 31)), std::optional<Date>()}) {
        knee.endDate = end;
        must(change(knee));
        ++knee.version;
        EXPECT_THAT(read(), testing::ElementsAre(knee));
    }
    knee.version = 1;
    knee.problem = "Somebody else's idea of it";
    EXPECT_EQ(codeOf(change(knee)), ErrorCode::changedElsewhere);
}

TEST_F(Courses, StayWithTheirPatientAndNumber)
{
    Course knee = tests::aCourse(patient);
    knee.id = must(add(knee));
    knee.number = 2;
    EXPECT_EQ(codeOf(change(knee)), ErrorCode::refused);
}

TEST_F(Courses, NeedAPatientAndAProblem)
{
    EXPECT_EQ(codeOf(add(tests::aCourse(PatientId(77)))), ErrorCode::notFound);
    Course nameless = tests::aCourse(patient);
    nameless.problem.clear();
    const auto added = add(nameless);
    ASSERT_EQ(codeOf(added), ErrorCode::notFilled);
    EXPECT_EQ(added.error().field, Field::problem);
    Course unknown = tests::aCourse(patient);
    unknown.id = CourseId(5);
    EXPECT_EQ(codeOf(change(unknown)), ErrorCode::notFound);
}

} // namespace
} // namespace quadrille::db
