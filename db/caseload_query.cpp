// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/caseload_query.h"

#include "db/block_rows.h"
#include "db/codec.h"
#include "db/course_rows.h"
#include "db/patient_rows.h"
#include "db/plan_rows.h"
#include "db/screening_rows.h"

#include <map>

namespace quadrille::db
{

namespace
{

/// The course that the caseload shows of each patient: one without a last day before the others,
/// then the one that ends later, then the later start.
constexpr const char* shownCourses =
    "WITH shown AS (SELECT id, row_number() OVER (PARTITION BY patient ORDER BY "
    "CASE WHEN end_date IS NULL THEN 0 ELSE 1 END, end_date DESC, start_date DESC, number DESC) "
    "AS place FROM course) ";

std::string withShown(const std::string& select)
{
    return shownCourses + select;
}

/// Rows by the key of the course that they belong to, so that each further statement finds its
/// place.
using ByCourse = std::map<std::int64_t, CaseloadRow*>;

std::vector<CaseloadRow> readPatients(const Connection& connection)
{
    std::vector<CaseloadRow> caseload;
    Statement rows(connection, std::string("SELECT ") + patientColumns +
                                   " FROM patient WHERE archived = 0 "
                                   "ORDER BY lower(patient.name), patient.name, patient.id");
    while (rows.next()) {
        caseload.push_back({.patient = takePatient(rows), .plans = {}});
    }
    return caseload;
}

ByCourse readCourses(const Connection& connection, std::vector<CaseloadRow>& caseload)
{
    std::map<PatientId, CaseloadRow*> byPatient;
    for (CaseloadRow& row : caseload) {
        byPatient[*row.patient.id] = &row;
    }
    ByCourse byCourse;
    Statement rows(connection, withShown(std::string("SELECT ") + courseColumns +
                                         " FROM course JOIN shown ON shown.id = course.id "
                                         "WHERE shown.place = 1"));
    while (rows.next()) {
        Course course = takeCourse(rows);
        const auto patient = byPatient.find(*course.patient);
        if (patient != byPatient.end()) { // an archived patient is not shown
            byCourse[course.id->key()] = patient->second;
            patient->second->course = std::move(course);
        }
    }
    return byCourse;
}

void readPlans(const Connection& connection, const ByCourse& byCourse)
{
    Statement rows(connection, withShown(std::string("SELECT ") + planColumns +
                                         " FROM plan JOIN shown ON shown.id = plan.course "
                                         "WHERE shown.place = 1 ORDER BY plan.course, "
                                         "plan.number"));
    while (rows.next()) {
        Plan plan = takePlan(rows);
        const auto row = byCourse.find(plan.course->key());
        if (row != byCourse.end()) {
            row->second->plans.push_back(std::move(plan));
        }
    }
}

void readBlocks(const Connection& connection, const ByCourse& byCourse)
{
    std::map<std::int64_t, Plan*> byPlan;
    for (const auto& [course, row] : byCourse) {
        for (Plan& plan : row->plans) {
            byPlan[plan.id->key()] = &plan;
        }
    }
    std::map<std::int64_t, std::pair<Plan*, std::size_t>> byBlock;
    Statement blocks(connection,
                     withShown(std::string("SELECT block.plan, block.id, ") + blockColumns +
                               " FROM block JOIN plan ON plan.id = block.plan "
                               "JOIN shown ON shown.id = plan.course WHERE shown.place = 1 "
                               "ORDER BY block.plan, block.ordinal"));
    while (blocks.next()) {
        const auto plan = byPlan.find(blocks.takeInteger());
        if (plan != byPlan.end()) {
            byBlock[blocks.takeInteger()] = {plan->second, plan->second->blocks.size()};
            plan->second->blocks.push_back(takeBlock(blocks));
        }
    }
    Statement sites(connection,
                    withShown("SELECT site.block, site.muscle, site.side, site.channel FROM site "
                              "JOIN block ON block.id = site.block "
                              "JOIN plan ON plan.id = block.plan "
                              "JOIN shown ON shown.id = plan.course WHERE shown.place = 1 "
                              "ORDER BY site.block, site.ordinal"));
    while (sites.next()) {
        const auto block = byBlock.find(sites.takeInteger());
        if (block != byBlock.end()) {
            auto& [plan, index] = block->second;
            Site& site = plan->blocks[index].sites.emplace_back();
            site.muscle = sites.takeText();
            site.side = takeChoice<Side>(sites);
            site.channel = takeInt(sites);
        }
    }
}

void readDrafts(const Connection& connection, const ByCourse& byCourse)
{
    Statement rows(connection, "SELECT course FROM draft WHERE state = 'saved'");
    while (rows.next()) {
        const auto row = byCourse.find(rows.takeInteger());
        if (row != byCourse.end()) {
            row->second->hasDraft = true;
        }
    }
}

void readSignatures(Reading& reading, const ByCourse& byCourse)
{
    const auto validity = readValidity(reading);
    Statement rows(reading.connection(),
                   withShown("SELECT screening.course, max(screening.number), signed_on "
                             "FROM screening JOIN shown ON shown.id = screening.course "
                             "WHERE shown.place = 1 GROUP BY screening.course"));
    while (rows.next()) {
        const auto row = byCourse.find(rows.takeInteger());
        rows.takeInteger(); // the latest, whose date follows
        const auto signedOn = takeOptionalDate(rows);
        if (row != byCourse.end() && signedOn) {
            row->second->screeningSigned = true;
            row->second->screeningValidThrough = validThrough(*signedOn, validity);
        }
    }
}

} // namespace

std::vector<CaseloadRow> caseload(Reading& reading)
{
    const Connection& connection = reading.connection();
    std::vector<CaseloadRow> rows = readPatients(connection);
    const ByCourse byCourse = readCourses(connection, rows);
    readPlans(connection, byCourse);
    readBlocks(connection, byCourse);
    readDrafts(connection, byCourse);
    readSignatures(reading, byCourse);
    return rows;
}

} // namespace quadrille::db
