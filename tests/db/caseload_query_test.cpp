// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"
#include "tests/support/whole_caseload.h"

#include "db/caseload_key.h"
#include "db/caseload_query.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <iterator>

namespace quadrille::db
{
namespace
{

using tests::author;
using tests::day;
using tests::must;

class CaseloadQuery : public testing::Test
{
protected:
    PatientId addPerson(const std::string& reference, const std::string& name)
    {
        return must(store->write(author(), "add patient", [&](Writing& writing) {
            return addPatient(writing, tests::aPatient(reference, name));
        }));
    }
    CourseId add(PatientId patient, const std::string& problem, Date start,
                 std::optional<Date> end = std::nullopt)
    {
        return must(store->write(author(), "add course", [&](Writing& writing) {
            return addCourse(
                writing,
                {.patient = patient, .problem = problem, .startDate = start, .endDate = end});
        }));
    }
    std::vector<CaseloadRow> read() { return must(store->read(tests::wholeCaseload)); }
    std::string shownProblem()
    {
        const auto rows = read();
        return rows.at(0).course->problem;
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
};

TEST_F(CaseloadQuery, IsEmptyInANewPractice)
{
    EXPECT_THAT(read(), testing::IsEmpty());
}

TEST_F(CaseloadQuery, ShowsEveryPatientByNameButTheArchivedOnes)
{
    addPerson("1", "Solveig Dunmore");
    Patient gone = tests::aPatient("2", "Nils Haverford");
    gone.archived = true;
    must(store->write(author(), "add patient",
                      [&](Writing& writing) { return addPatient(writing, gone); }));
    addPerson("3", "Agnes Thorley");
    std::vector<std::string> names;
    for (const CaseloadRow& row : read()) {
        names.push_back(row.patient.name);
        EXPECT_EQ(row.course, std::nullopt);
        EXPECT_THAT(row.plans, testing::IsEmpty());
        EXPECT_FALSE(row.hasDraft);
    }
    EXPECT_THAT(names, testing::ElementsAre("Agnes Thorley", "Solveig Dunmore"));
}

TEST_F(CaseloadQuery, ARunningCourseGoesBeforeAnEndedOneAndThenTheLaterStart)
{
    const PatientId patient = addPerson("1", "Agnes Thorley");
    add(patient, "ended long ago", day(2025, 6, 1), day(2025, 9, 1));
    add(patient, "ended lately", day(2025, 11, 1), day(2026, 2, 20));
    EXPECT_EQ(shownProblem(), "ended lately");
    add(patient, "runs", day(2025, 1, 1));
    EXPECT_EQ(shownProblem(), "runs");
    add(patient, "runs since later", day(2026, 1, 1));
    EXPECT_EQ(shownProblem(), "runs since later");
}

TEST_F(CaseloadQuery, GivesThePlansOfTheShownCourseWithBlocksAndSitesWithoutPads)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    const PlanId first = tests::anIssuedPlan(*store, ids);
    Draft next = tests::aDraft(ids);
    next.blocks = {tests::aBlock(tests::aUnit()), tests::aBlock(tests::aUnit())};
    next.blocks[1].weeks = 3;
    next.blocks[1].schedule = DaysPerWeek{3};
    next.blocks[1].sites.push_back(tests::aSite(tests::aUnit()));
    next.blocks[1].sites[1].muscle = "vastus medialis";
    next.blocks[1].sites[1].channel = 2;
    must(store->write(author(), "issue plan", [&](Writing& writing) {
        return issuePlan(
            writing, next,
            {.fromDate = day(2026, 3, 12), .reason = "step up", .issuedBy = ids.practitioner},
            day(2026, 3, 12));
    }));
    must(store->write(author(), "save draft",
                      [&](Writing& writing) { return saveDraft(writing, tests::aDraft(ids)); }));

    const auto rows = read();
    ASSERT_THAT(rows, testing::SizeIs(1));
    EXPECT_TRUE(rows[0].hasDraft);
    ASSERT_THAT(rows[0].plans, testing::SizeIs(2));
    EXPECT_EQ(rows[0].plans[0].id, first);
    const Plan& second = rows[0].plans[1];
    EXPECT_EQ(second.number, 2);
    EXPECT_EQ(second.reason, "step up");
    ASSERT_THAT(second.blocks, testing::SizeIs(2));
    EXPECT_EQ(second.blocks[1].weeks, 3);
    EXPECT_EQ(second.blocks[1].schedule, Schedule(DaysPerWeek{3}));
    ASSERT_THAT(second.blocks[1].sites, testing::SizeIs(2));
    Site expected = next.blocks[1].sites[1];
    expected.pads.clear();
    EXPECT_EQ(second.blocks[1].sites[1], expected);
}

TEST_F(CaseloadQuery, APlanSaysWithWhatItsUnitBeginsAndWhatItDoesWithRamps)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    Stimulator unit = tests::aUnit();
    unit.id = ids.stimulator;
    unit.cycleStart = CycleStart::withOff;
    unit.rampHabit = RampHabit::addedToOnTime;
    must(store->write(author(), "change unit",
                      [&](Writing& writing) { changeStimulator(writing, unit); }));
    tests::anIssuedPlan(*store, ids);
    const auto rows = read();
    ASSERT_THAT(rows.at(0).plans, testing::SizeIs(1));
    EXPECT_EQ(rows[0].plans[0].stimulator.cycleStart, CycleStart::withOff);
    EXPECT_EQ(rows[0].plans[0].stimulator.rampHabit, RampHabit::addedToOnTime);
}

TEST_F(CaseloadQuery, PlansAndDraftsOfAnotherCourseAreNotMixedIn)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    tests::anIssuedPlan(*store, ids);
    must(store->write(author(), "save draft",
                      [&](Writing& writing) { return saveDraft(writing, tests::aDraft(ids)); }));
    add(ids.patient, "a later course", day(2026, 3, 1));
    const auto rows = read();
    EXPECT_EQ(rows.at(0).course->problem, "a later course");
    EXPECT_THAT(rows.at(0).plans, testing::IsEmpty());
    EXPECT_FALSE(rows.at(0).hasDraft);
}

TEST_F(CaseloadQuery, UnsavedWorkIsNoDraft)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    must(store->write(author(), "keep",
                      [&](Writing& writing) { keepUnsavedDraft(writing, tests::aDraft(ids)); }));
    EXPECT_FALSE(read().at(0).hasDraft);
}

class EndedCourses : public CaseloadQuery
{
protected:
    static Date today() { return day(2026, 3, 12); }
    /// A patient whose one course ended.
    PatientId addEnded(const std::string& reference, const std::string& name,
                       Date end = day(2026, 1, 31))
    {
        const PatientId patient = addPerson(reference, name);
        add(patient, "Knee replacement", day(2025, 11, 1), end);
        return patient;
    }
    std::vector<std::string> found(const std::vector<std::string>& words, int most = 100)
    {
        std::vector<std::string> names;
        std::optional<CaseloadFacts> last;
        while (true) {
            const auto page = must(store->read([&](Reading& reading) {
                return endedCaseload(reading, {.today = today(), .words = words}, last, most);
            }));
            if (page.empty()) {
                return names;
            }
            for (const CaseloadFacts& facts : page) {
                names.push_back(facts.name);
            }
            last = page.back();
        }
    }
    std::vector<CaseloadFacts> current(Date on = today())
    {
        return must(store->read([&](Reading& reading) { return currentCaseload(reading, on); }));
    }
};

TEST_F(EndedCourses, ArePagedByNameWithoutAccentsNobodyTwice)
{
    addEnded("1", "Zoë Wendmore");
    addEnded("2", "Édouard Quillan");
    addEnded("3", "edward Quill");
    addEnded("4", "Édouard Quillan");
    const std::vector<std::string> all{"Édouard Quillan", "Édouard Quillan", "edward Quill",
                                       "Zoë Wendmore"};
    EXPECT_EQ(found({}, 1), all);
    EXPECT_EQ(found({}, 3), all);
}

TEST_F(EndedCourses, ACourseRunsOnItsLastDayAndHasEndedOnTheNext)
{
    addEnded("1", "Agnes Thorley", today());
    EXPECT_THAT(current(), testing::SizeIs(1));
    EXPECT_THAT(found({}), testing::IsEmpty());
    EXPECT_THAT(current(today() + std::chrono::days(1)), testing::IsEmpty());
    EXPECT_EQ(must(store->read([](Reading& reading) {
                  return countEnded(reading,
                                    {.today = today() + std::chrono::days(1), .words = {}});
              })),
              1);
}

TEST_F(EndedCourses, AreCountedOutToAThousandWhereASearchFindsMore)
{
    must(store->write(author(), "many", [](Writing& writing) {
        for (int i = 0; i < mostCounted + 5; ++i) {
            Patient patient;
            patient.reference = std::to_string(5000 + i);
            patient.name = "Miriam Oakhanger";
            Course course;
            course.patient = addPatient(writing, patient);
            course.problem = "Knee replacement";
            course.startDate = day(2025, 11, 1);
            course.endDate = day(2026, 1, 31);
            addCourse(writing, course);
        }
    }));
    const auto counted = [&](const std::vector<std::string>& words) {
        return must(store->read([&](Reading& reading) {
            return countEnded(reading, {.today = today(), .words = words});
        }));
    };
    EXPECT_EQ(counted({"oak"}), mostCounted);
    EXPECT_EQ(counted({"oak", "5007"}), 1);
    EXPECT_EQ(counted({}), mostCounted + 5) << "the head of the caseload says how many there are";
}

TEST_F(EndedCourses, AreFoundByWordsInAnyOrderFromNameReferenceAndProblem)
{
    addEnded("2041", "Miriam Oakhanger");
    addEnded("2042", "Nils Haverford");
    EXPECT_THAT(found({"oak", "knee"}), testing::ElementsAre("Miriam Oakhanger"));
    EXPECT_THAT(found({"2042"}), testing::ElementsAre("Nils Haverford"));
    EXPECT_THAT(found({"oak", "hip"}), testing::IsEmpty());
    EXPECT_THAT(found({"%"}), testing::IsEmpty()) << "signs of a pattern mean nothing here";
}

TEST_F(EndedCourses, AreFoundUnderWhatTheyWereChangedTo)
{
    Patient patient = tests::aPatient("1", "Miriam Oakhanger");
    const PatientId id = addEnded("1", patient.name);
    patient = *must(store->read([&](Reading& reading) { return db::patient(reading, id); }));
    patient.name = "Miriam Ashdowne";
    must(store->write(author(), "change patient",
                      [&](Writing& writing) { changePatient(writing, patient); }));
    EXPECT_THAT(found({"oakhanger"}), testing::IsEmpty());
    EXPECT_THAT(found({"ashdowne"}), testing::SizeIs(1));
    patient = *must(store->read([&](Reading& reading) { return db::patient(reading, id); }));
    patient.archived = true;
    must(store->write(author(), "archive patient",
                      [&](Writing& writing) { changePatient(writing, patient); }));
    EXPECT_THAT(found({}), testing::IsEmpty());
}

TEST_F(EndedCourses, ABegunCourseMakesAPatientCurrentAgain)
{
    const PatientId patient = addEnded("1", "Miriam Oakhanger");
    add(patient, "Hip replacement", day(2026, 3, 1));
    EXPECT_THAT(found({}), testing::IsEmpty());
    ASSERT_THAT(current(), testing::SizeIs(1));
    EXPECT_THAT(current()[0].words, testing::HasSubstr("knee replacement"))
        << "an earlier problem finds her too";
}

TEST_F(EndedCourses, FactsSayWhatDecidesOnAttention)
{
    const tests::Practiced ids = tests::aPracticeWithCourse(*store);
    EXPECT_EQ(current().at(0).course->plannedWeeks, std::nullopt);
    tests::anIssuedPlan(*store, ids);
    must(store->write(author(), "save draft",
                      [&](Writing& writing) { return saveDraft(writing, tests::aDraft(ids)); }));
    const CaseloadFacts facts = current().at(0);
    ASSERT_TRUE(facts.course);
    EXPECT_EQ(facts.course->id, ids.course);
    EXPECT_EQ(facts.course->plannedWeeks, totalWeeks(tests::aDraft(ids).blocks));
    EXPECT_TRUE(facts.course->hasDraft);
    EXPECT_THAT(facts.words,
                testing::HasSubstr(foldedWords(QString::fromStdString(
                                                   tests::aDraft(ids).blocks[0].sites[0].muscle))
                                       .toStdString()));
}

} // namespace
} // namespace quadrille::db
