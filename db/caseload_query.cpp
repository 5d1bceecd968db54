// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/caseload_query.h"

#include "db/block_rows.h"
#include "db/codec.h"
#include "db/course_rows.h"
#include "db/patient_rows.h"
#include "db/plan_rows.h"
#include "db/screening_rows.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace quadrille::db
{

namespace
{

constexpr const char* factColumns =
    "SELECT key.patient, patient.name, key.words, key.name, key.course, course.start_date, "
    "course.end_date, "
    "(SELECT sum(block.weeks) FROM block WHERE block.plan = (SELECT plan.id FROM plan "
    "WHERE plan.course = key.course ORDER BY plan.number DESC LIMIT 1)), "
    "EXISTS (SELECT 1 FROM draft WHERE draft.course = key.course AND draft.state = 'saved'), "
    "(SELECT screening.signed_on FROM screening WHERE screening.course = key.course "
    "ORDER BY screening.number DESC LIMIT 1) ";
constexpr const char* joined = "JOIN patient ON patient.id = key.patient "
                               "LEFT JOIN course ON course.id = key.course ";

CaseloadFacts takeFacts(Statement& row, std::chrono::months validity)
{
    CaseloadFacts facts;
    facts.patient = takeId<Patient>(row);
    facts.name = row.takeText();
    facts.words = row.takeText();
    facts.foldedName = row.takeText();
    const auto course = takeOptionalId<Course>(row);
    if (!course) {
        return facts;
    }
    CaseloadCourse& shown = facts.course.emplace();
    shown.id = *course;
    shown.startDate = takeDate(row);
    shown.endDate = takeOptionalDate(row);
    const auto weeks = row.takeOptionalInteger();
    if (weeks) {
        shown.plannedWeeks = static_cast<int>(*weeks);
    }
    shown.hasDraft = takeFlag(row);
    if (const auto signedOn = takeOptionalDate(row)) {
        shown.screeningSigned = true;
        shown.screeningValidThrough = monthsLater(*signedOn, validity);
    }
    return facts;
}

std::vector<CaseloadFacts> takeAllFacts(Reading& reading, Statement& rows)
{
    const auto validity = readValidity(reading);
    std::vector<CaseloadFacts> all;
    while (rows.next()) {
        all.push_back(takeFacts(rows, validity));
    }
    return all;
}

/// The condition of a search and the values for its marks. Folded words are letters, digits and
/// nothing that GLOB would read as a sign; it skips to the first letter and so is faster than
/// instr().
std::pair<std::string, std::vector<Value>> conditionOf(const EndedSearch& search)
{
    std::string condition;
    std::vector<Value> values;
    for (const std::string& word : search.words) {
        condition += "words GLOB ? AND ";
        values.push_back(valueOf("*" + word + "*"));
    }
    // With words the index that holds them is read from name to name, not the one of last days.
    condition += search.words.empty() ? "ends_on < ?" : "+ends_on < ?";
    values.push_back(valueOf(search.today));
    return {condition, values};
}

std::optional<Patient> shownPatient(const Connection& connection, PatientId id)
{
    Statement row(connection, std::string("SELECT ") + patientColumns +
                                  " FROM patient WHERE id = ? AND archived = 0");
    row.bind({valueOf(id)});
    return row.next() ? std::optional(takePatient(row)) : std::nullopt;
}

std::optional<Course> shownCourse(const Connection& connection, PatientId patient)
{
    Statement row(connection, std::string("SELECT ") + courseColumns +
                                  " FROM caseload_key JOIN course ON course.id = "
                                  "caseload_key.course WHERE caseload_key.patient = ?");
    row.bind({valueOf(patient)});
    return row.next() ? std::optional(takeCourse(row)) : std::nullopt;
}

std::vector<Site> shownSites(const Connection& connection, std::int64_t block)
{
    std::vector<Site> sites;
    Statement rows(connection, std::string("SELECT ") + siteColumns +
                                   " FROM site WHERE block = ? ORDER BY ordinal");
    rows.bind({valueOf(block)});
    while (rows.next()) {
        sites.push_back(takeSite(rows));
    }
    return sites;
}

std::vector<Block> shownBlocks(const Connection& connection, PlanId plan)
{
    std::vector<Block> blocks;
    Statement rows(connection, std::string("SELECT block.id, ") + blockColumns +
                                   " FROM block WHERE plan = ? ORDER BY ordinal");
    rows.bind({valueOf(plan)});
    while (rows.next()) {
        const std::int64_t id = rows.takeInteger();
        Block block = takeBlock(rows);
        block.sites = shownSites(connection, id);
        blocks.push_back(std::move(block));
    }
    return blocks;
}

std::vector<Plan> shownPlans(const Connection& connection, CourseId course)
{
    std::vector<Plan> plans;
    Statement rows(connection,
                   std::string("SELECT ") + planColumns +
                       ", stimulator.ramp_habit, stimulator.cycle_start FROM plan "
                       "JOIN stimulator ON stimulator.id = plan.stimulator WHERE plan.course = ? "
                       "ORDER BY plan.number");
    rows.bind({valueOf(course)});
    while (rows.next()) {
        Plan plan = takePlan(rows);
        plan.stimulator.rampHabit = takeChoice<RampHabit>(rows);
        plan.stimulator.cycleStart = takeChoice<CycleStart>(rows);
        plan.blocks = shownBlocks(connection, *plan.id);
        plans.push_back(std::move(plan));
    }
    return plans;
}

/// Whether the latest screening of a course is signed, and until when it holds.
void readSignature(Reading& reading, CaseloadRow& row)
{
    const auto screening = readLatestScreening(reading, *row.course->id);
    if (screening && screening->signedOn) {
        row.screeningSigned = true;
        row.screeningValidThrough = monthsLater(*screening->signedOn, readValidity(reading));
    }
}

} // namespace

std::vector<CaseloadFacts> currentCaseload(Reading& reading, Date today)
{
    // Ordered here: asked for an order, the database would read everybody's key for its sake.
    Statement rows(reading.connection(), std::string(factColumns) + "FROM caseload_key AS key " +
                                             joined + "WHERE key.ends_on >= ?");
    rows.bind({valueOf(today)});
    std::vector<CaseloadFacts> all = takeAllFacts(reading, rows);
    std::ranges::sort(all, {}, [](const CaseloadFacts& facts) {
        return std::pair(std::string_view(facts.foldedName), facts.patient);
    });
    return all;
}

int countEnded(Reading& reading, const EndedSearch& search)
{
    auto [condition, values] = conditionOf(search);
    std::string sql = "SELECT count(*) FROM caseload_key WHERE " + condition;
    if (!search.words.empty()) {
        sql = "SELECT count(*) FROM (SELECT 1 FROM caseload_key INDEXED BY caseload_key_by_name "
              "WHERE " +
              condition + " LIMIT ?)";
        values.push_back(valueOf(mostCounted));
    }
    return static_cast<int>(numberFrom(reading.connection(), sql, values).value_or(0));
}

std::vector<CaseloadFacts> endedCaseload(Reading& reading, const EndedSearch& search,
                                         const std::optional<CaseloadFacts>& last, int most)
{
    auto [condition, values] = conditionOf(search);
    if (last) {
        condition += " AND (name, patient) > (?, ?)";
        values.push_back(valueOf(last->foldedName));
        values.push_back(valueOf(last->patient));
    }
    values.push_back(valueOf(most));
    // The page is found in the index alone; the rest is looked up for what is on it.
    Statement rows(reading.connection(),
                   std::string(factColumns) +
                       "FROM (SELECT patient AS paged FROM caseload_key WHERE " + condition +
                       " ORDER BY name, patient LIMIT ?) "
                       "JOIN caseload_key AS key ON key.patient = paged " +
                       joined + "ORDER BY key.name, key.patient");
    rows.bind(values);
    return takeAllFacts(reading, rows);
}

std::vector<CaseloadRow> caseloadRows(Reading& reading, const std::vector<PatientId>& patients)
{
    const Connection& connection = reading.connection();
    std::vector<CaseloadRow> rows;
    for (const PatientId id : patients) {
        auto patient = shownPatient(connection, id);
        if (!patient) {
            continue;
        }
        CaseloadRow row{.patient = std::move(*patient), .plans = {}};
        row.course = shownCourse(connection, id);
        if (row.course) {
            row.plans = shownPlans(connection, *row.course->id);
            row.hasDraft =
                numberFrom(connection, "SELECT id FROM draft WHERE course = ? AND state = 'saved'",
                           {valueOf(row.course->id)})
                    .has_value();
            readSignature(reading, row);
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

} // namespace quadrille::db
