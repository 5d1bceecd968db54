// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/demo_practice.h"
#include "tests/support/temp_store.h"
#include "tests/support/whole_caseload.h"

#include "db/caseload_query.h"
#include "db/courses.h"
#include "db/electrode_sets.h"
#include "db/loans.h"
#include "db/measurements.h"
#include "db/people.h"
#include "db/plans.h"
#include "db/screenings.h"
#include "db/sql.h"
#include "db/stimulators.h"

#include "core/measurement_change.h"
#include "core/plan_figures.h"
#include "core/suitability.h"

#include <QFile>

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>
#include <vector>

namespace quadrille::app
{
namespace
{

using db::Reading;
using tests::day;
using tests::must;
using tests::TempStore;

const Date thursday = day(2026, 3, 12);

std::unique_ptr<db::Store> demoOn(const TempStore& temp, Date today)
{
    must(writeDemoPractice(temp.file(), today));
    return temp.open(db::Opening::existing);
}

/// Every row of every table as text, but for the seals of the change record: their salts are
/// random.
std::string everyRow(db::Store& store)
{
    return must(store.read([](Reading& reading) {
        std::string text;
        std::vector<std::string> queries;
        db::Statement tables(reading.connection(),
                             "SELECT tables.name, group_concat('quote(' || columns.name || ')', "
                             "' || '','' || ') FROM sqlite_schema tables "
                             "JOIN pragma_table_info(tables.name) columns "
                             "WHERE tables.type = 'table' AND columns.name NOT IN "
                             "('salt', 'value_digest', 'chain') GROUP BY tables.name");
        while (tables.next()) {
            const std::string table = tables.takeText();
            queries.push_back("SELECT " + tables.takeText() + " AS row FROM " + table +
                              " ORDER BY row");
        }
        for (const std::string& query : queries) {
            db::Statement rows(reading.connection(), query);
            while (rows.next()) {
                text += rows.takeText() + "\n";
            }
        }
        return text;
    }));
}

std::vector<db::CaseloadRow> caseloadOf(db::Store& store)
{
    return must(store.read([](Reading& reading) { return tests::wholeCaseload(reading); }));
}

/// All issued plans with everything in them.
std::vector<Plan> plansOf(db::Store& store)
{
    return must(store.read([](Reading& reading) {
        std::vector<Plan> all;
        for (const db::CaseloadRow& row : tests::wholeCaseload(reading)) {
            for (const Course& course : db::coursesOf(reading, *row.patient.id)) {
                for (Plan& plan : db::plansOf(reading, *course.id)) {
                    all.push_back(std::move(plan));
                }
            }
        }
        return all;
    }));
}

TEST(DemoPractice, IsTheSameForTheSameDay)
{
    const TempStore first;
    const TempStore second;
    const std::string rows = everyRow(*demoOn(first, thursday));
    EXPECT_THAT(rows, testing::HasSubstr("Agnes Thorley"));
    EXPECT_EQ(rows, everyRow(*demoOn(second, thursday)));
}

TEST(DemoPractice, IsNeverWrittenOverAFile)
{
    const TempStore temp;
    QFile file(temp.file());
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("mine");
    file.close();
    const auto written = writeDemoPractice(temp.file(), thursday);
    ASSERT_EQ(tests::codeOf(written), ErrorCode::cannotWrite);
    EXPECT_EQ(written.error().subject, temp.file().toStdString());
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), QByteArray("mine"));
}

TEST(DemoPractice, HasPeopleAndUnitsOfManyKinds)
{
    const TempStore temp;
    const auto store = demoOn(temp, thursday);
    must(store->read([](Reading& reading) {
        EXPECT_EQ(db::practice(reading)->name, "Quay Lane Physiotherapy");
        EXPECT_THAT(db::practitioners(reading), testing::SizeIs(2));
        const auto units = db::stimulators(reading);
        EXPECT_THAT(units, testing::SizeIs(7));
        const auto unsuitable = std::ranges::count_if(
            units, [](const Stimulator& unit) { return hasStop(suitabilityFindings(unit)); });
        EXPECT_EQ(unsuitable, 2);
    }));
    const auto rows = caseloadOf(*store);
    EXPECT_GE(rows.size(), 24U);
    const auto [youngest, oldest] = std::ranges::minmax(
        rows, {}, [](const db::CaseloadRow& row) { return row.patient.birthDate; });
    EXPECT_EQ(ageInYears(oldest.patient.birthDate, thursday), 19);
    EXPECT_EQ(ageInYears(youngest.patient.birthDate, thursday), 88);
}

TEST(DemoPractice, HasUnitsThatAreOutHereAndOverdue)
{
    for (const Date today :
         {thursday, thursday - std::chrono::days(3), thursday + std::chrono::days(10)}) {
        const TempStore temp;
        const auto store = demoOn(temp, today);
        const auto units = must(store->read([](Reading& r) { return db::inventory(r); }));
        EXPECT_THAT(units, testing::SizeIs(11));
        int lent = 0;
        int backOverdue = 0;
        int checkOverdue = 0;
        for (const db::InventoryRow& row : units) {
            const UnitStanding standing = standingOn(row.unit, row.loan, today);
            lent += row.loan ? 1 : 0;
            backOverdue += standing.backOverdue ? 1 : 0;
            checkOverdue += standing.checkOverdue ? 1 : 0;
        }
        EXPECT_EQ(lent, 8);
        EXPECT_EQ(backOverdue, 1);
        EXPECT_EQ(checkOverdue, 1);
    }
}

TEST(DemoPractice, ShowsEveryStageOfACourse)
{
    const TempStore temp;
    const auto store = demoOn(temp, thursday);
    int noCourse = 0;
    int noPlan = 0;
    int draftOnly = 0;
    int notBegun = 0;
    int running = 0;
    int weeksOver = 0;
    int ended = 0;
    int replaced = 0;
    for (const db::CaseloadRow& row : caseloadOf(*store)) {
        if (!row.course) {
            ++noCourse;
            continue;
        }
        const bool runs = isRunning(*row.course, thursday);
        const auto week = courseWeekOf(row.course->startDate, thursday);
        noPlan += row.plans.empty() && !row.hasDraft ? 1 : 0;
        draftOnly += row.plans.empty() && row.hasDraft ? 1 : 0;
        ended += runs ? 0 : 1;
        replaced += row.plans.size() > 1 ? 1 : 0;
        if (runs && !row.plans.empty()) {
            const bool over = week && week->number > totalWeeks(row.plans.back().blocks);
            notBegun += week ? 0 : 1;
            weeksOver += over ? 1 : 0;
            running += week && !over ? 1 : 0;
        }
    }
    EXPECT_GE(noCourse, 1);
    EXPECT_GE(noPlan, 1);
    EXPECT_GE(draftOnly, 1);
    EXPECT_GE(notBegun, 1);
    EXPECT_GE(running, 14);
    EXPECT_GE(weeksOver, 2);
    EXPECT_GE(ended, 4);
    EXPECT_GE(replaced, 5);
}

TEST(DemoPractice, HasScreeningsOfEveryKind)
{
    const TempStore temp;
    const auto store = demoOn(temp, thursday);
    int open = 0;
    int notSigned = 0;
    int goneAhead = 0;
    int precautions = 0;
    int localElsewhere = 0;
    must(store->read([&](Reading& reading) {
        for (const db::CaseloadRow& row : tests::wholeCaseload(reading)) {
            if (!row.course) {
                continue;
            }
            const auto plans = db::plansOf(reading, *row.course->id);
            const ScreeningGate gate = db::gateOf(
                reading, *row.course->id,
                plans.empty() ? std::vector<Block>() : plans.back().blocks, row.course->startDate);
            const auto latest = db::latestScreeningOf(reading, *row.course->id);
            ASSERT_TRUE(latest) << row.patient.name;
            open += gate.isOpen() ? 1 : 0;
            notSigned += latest->signedOn ? 0 : 1;
            goneAhead += gate.lifted.empty() ? 0 : 1;
            precautions += gate.isOpen() && !gate.advice.empty() ? 1 : 0;
            const ScreeningAnswer* veins = answerTo(*latest, "varicose_veins");
            localElsewhere += gate.isOpen() && veins->answer == Answer::yes ? 1 : 0;
        }
    }));
    EXPECT_GE(open, 20);
    EXPECT_GE(notSigned, 2);
    EXPECT_GE(goneAhead, 1);
    EXPECT_GE(precautions, 2);
    EXPECT_GE(localElsewhere, 1);
}

TEST(DemoPractice, HasAPatientWithTwoRunningCourses)
{
    const TempStore temp;
    const auto store = demoOn(temp, thursday);
    must(store->read([](Reading& reading) {
        const auto rows = tests::wholeCaseload(reading);
        const auto kwame = std::ranges::find(
            rows, "Kwame Ashdowne", [](const db::CaseloadRow& row) { return row.patient.name; });
        ASSERT_NE(kwame, rows.end());
        const auto courses = db::coursesOf(reading, *kwame->patient.id);
        EXPECT_EQ(std::ranges::count_if(
                      courses, [](const Course& course) { return isRunning(course, thursday); }),
                  2);
    }));
}

TEST(DemoPractice, HasAgnesThorleyInHerFifthWeekOfTwelve)
{
    const TempStore temp;
    const auto store = demoOn(temp, thursday);
    must(store->read([](Reading& reading) {
        const auto agnes = db::patientByReference(reading, "1001");
        ASSERT_TRUE(agnes);
        EXPECT_EQ(agnes->name, "Agnes Thorley");
        const Course course = db::coursesOf(reading, *agnes->id).at(0);
        EXPECT_EQ(courseWeekOf(course.startDate, thursday), CourseWeek{5});
        const Plan plan = db::plansOf(reading, *course.id).at(0);
        EXPECT_EQ(totalWeeks(plan.blocks), 12);
        ASSERT_THAT(plan.blocks, testing::SizeIs(4));
        // 10 s on, 25 s off, 20 min: the last on phase ends exactly with the session.
        EXPECT_EQ(blockFigures(plan.blocks[3], plan.stimulator).contractions, 35);
    }));
}

TEST(DemoPractice, HasMeasurementsAtBaselineAndLaterAndSetsOfPads)
{
    const TempStore temp;
    const auto store = demoOn(temp, thursday);
    must(store->read([](Reading& reading) {
        const auto agnes = db::patientByReference(reading, "1001");
        const Course course = db::coursesOf(reading, *agnes->id).at(0);
        EXPECT_EQ(course.treatedSide, TreatedSide::right);
        const auto series = seriesOf(db::measurementsOf(reading, *course.id));
        ASSERT_FALSE(series.empty());
        EXPECT_EQ(series[0].kind, isometricTorque);
        const auto index = symmetryOf(series[0], course.treatedSide);
        ASSERT_THAT(index, testing::SizeIs(3));
        EXPECT_NEAR(index.back().percent, 72.3, 0.1); // 68 of 94 N·m
        const auto pads = db::electrodeSetsOf(reading, *course.id);
        ASSERT_THAT(pads, testing::SizeIs(1));
        EXPECT_TRUE(wearOf(pads[0], {}, thursday).replacementDue()); // handed out five weeks ago
    }));
}

TEST(DemoPractice, StepsUpOnTheDayOfIssue)
{
    const TempStore temp;
    const auto store = demoOn(temp, thursday);
    int later = 0;
    for (const Plan& plan : plansOf(*store)) {
        if (plan.number > 1) {
            ++later;
            EXPECT_EQ(plan.fromDate, plan.issuedOn);
        }
    }
    EXPECT_GE(later, 5);
}

/// Days of every weekday, at the turn of a year and on a leap day.
class DemoPracticeOn : public testing::TestWithParam<Date>
{
};

TEST_P(DemoPracticeOn, IssuesNothingThatCannotBeRun)
{
    const TempStore temp;
    const auto store = demoOn(temp, GetParam());
    const std::vector<Plan> plans = plansOf(*store);
    EXPECT_GE(plans.size(), 25U);
    for (const Plan& plan : plans) {
        for (const Block& block : plan.blocks) {
            EXPECT_FALSE(blockFigures(block, plan.stimulator).hasStop()) << plan.reason;
        }
    }
}

TEST_P(DemoPracticeOn, LiesInThePastAndReachesBackHalfAYear)
{
    const TempStore temp;
    const auto store = demoOn(temp, GetParam());
    must(store->read([](Reading& reading) {
        const Moment morning = Moment(GetParam());
        db::Statement row(reading.connection(), "SELECT min(made_at), max(made_at), "
                                                "sum(made_at < lag) FROM (SELECT made_at, "
                                                "lag(made_at) OVER (ORDER BY id) AS lag "
                                                "FROM change_record)");
        ASSERT_TRUE(row.next());
        EXPECT_LT(momentFromIso(row.takeText()), morning - std::chrono::days(180));
        EXPECT_LT(momentFromIso(row.takeText()), morning);
        EXPECT_EQ(row.takeInteger(), 0) << "the change record runs backwards";
    }));
    for (const Plan& plan : plansOf(*store)) {
        EXPECT_LT(plan.issuedOn, GetParam());
    }
}

INSTANTIATE_TEST_SUITE_P(EveryWeekday, DemoPracticeOn,
                         testing::Values(day(2026, 3, 9), day(2026, 3, 10), day(2026, 3, 11),
                                         day(2026, 3, 12), day(2026, 3, 13), day(2026, 3, 14),
                                         day(2026, 3, 15), day(2027, 1, 1), day(2028, 2, 29)));

} // namespace
} // namespace quadrille::app
