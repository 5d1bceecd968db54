// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/verification.h"

#include "db/change_chain.h"
#include "db/codec.h"
#include "db/migrations.h"
#include "db/plan_seal.h"

#include "core/measurement_kinds.h"

#include <map>
#include <string>
#include <string_view>

namespace quadrille::db
{

namespace
{

using Complaints = std::vector<Complaint>;

void checkPages(const Connection& connection, Complaints& complaints)
{
    Statement rows(connection, dialect::checkIntegrity);
    while (rows.next()) {
        const std::string fault = rows.takeText();
        if (fault != "ok") {
            complaints.push_back({Fault::damage, {}, fault});
        }
    }
}

void checkReferences(const Connection& connection, Complaints& complaints)
{
    Statement rows(connection, dialect::findBrokenReferences);
    while (rows.next()) {
        const std::string table = rows.takeText();
        const auto row = rows.takeOptionalInteger();
        complaints.push_back({Fault::reference, row ? table + " " + std::to_string(*row) : table,
                              "no " + rows.takeText()});
    }
}

using Schema = std::map<std::string, std::string>;

Schema schemaOf(const Connection& connection)
{
    Schema schema;
    Statement rows(connection, "SELECT type || ' ' || name, sql FROM sqlite_schema "
                               "WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%'");
    while (rows.next()) {
        const std::string name = rows.takeText();
        schema[name] = rows.takeText();
    }
    return schema;
}

/// Against what the steps make.
void checkSchema(const Connection& connection, Complaints& complaints)
{
    const Connection model(QStringLiteral(":memory:"), Access::readWrite, {});
    applyMissing(model, builtInSteps());
    const Schema expected = schemaOf(model);
    const Schema present = schemaOf(connection);
    for (const auto& [name, text] : expected) {
        const auto found = present.find(name);
        if (found == present.end()) {
            complaints.push_back({Fault::schema, name, "missing"});
        } else if (found->second != text) {
            complaints.push_back({Fault::schema, name, "changed"});
        }
    }
    for (const auto& [name, text] : present) {
        if (!expected.contains(name)) {
            complaints.push_back({Fault::schema, name, "not ours"});
        }
    }
}

void checkPlans(const Connection& connection, Complaints& complaints)
{
    // The seal was recorded when the plan was issued; its row in the change record has it.
    Statement rows(connection,
                   "SELECT plan.id, (SELECT change_value.to_value FROM change_record "
                   "JOIN change_value ON change_value.change = change_record.id "
                   "WHERE change_record.record_kind = 'plan' AND change_record.record_id = plan.id "
                   "AND change_record.field = 'content_digest' ORDER BY change_record.id DESC "
                   "LIMIT 1) FROM plan ORDER BY plan.id");
    while (rows.next()) {
        const std::int64_t plan = rows.takeInteger();
        const auto seal = rows.takeOptionalText();
        const std::string place = "plan " + std::to_string(plan);
        if (!seal) {
            complaints.push_back({Fault::changedPlan, place, "it was never issued"});
        } else if (*seal != planSeal(connection, plan)) {
            complaints.push_back({Fault::changedPlan, place, "it is not what was issued"});
        }
    }
}

/// Plans that the change record knows as issued and nobody erased.
void checkMissingPlans(const Connection& connection, Complaints& complaints)
{
    Statement rows(connection,
                   "SELECT DISTINCT record_id FROM change_record WHERE record_kind = 'plan' "
                   "AND field = 'content_digest' AND record_id NOT IN (SELECT id FROM plan) "
                   "AND patient NOT IN (SELECT patient FROM erasure) ORDER BY record_id");
    while (rows.next()) {
        complaints.push_back({Fault::changedPlan, "plan " + std::to_string(rows.takeInteger()),
                              "it was issued and is missing"});
    }
}

Columns takeChained(Statement& row)
{
    Columns columns;
    for (int i = 0; i < chainedColumnCount; ++i) {
        columns.push_back({{}, row.takeValue()});
    }
    return columns;
}

/// Every row of the change record, its chain and its values.
void checkChain(const Connection& connection, Complaints& complaints)
{
    std::string chain(64, '0');
    std::int64_t expected = 0;
    Statement rows(connection,
                   std::string("SELECT ") + chainedColumns +
                       ", chain, change_value.salt, change_value.from_value, "
                       "change_value.to_value, erasure.id FROM change_record "
                       "LEFT JOIN change_value ON change_value.change = change_record.id "
                       "LEFT JOIN (SELECT id, patient AS erased FROM erasure) erasure "
                       "ON erasure.erased = change_record.patient ORDER BY change_record.id");
    while (rows.next()) {
        const Columns row = takeChained(rows);
        const std::int64_t id = std::get<std::int64_t>(row.front().value);
        const std::string place = "change_record " + std::to_string(id);
        if (id != ++expected) {
            complaints.push_back({Fault::brokenChain, place, "rows before it are missing"});
            expected = id;
        }
        const std::string stored = rows.takeText();
        if (stored != chainAfter(chain, row)) {
            complaints.push_back({Fault::brokenChain, place, "it or the row before was altered"});
        }
        chain = stored; // one altered row is one complaint
        const auto salt = rows.takeOptionalText();
        const Value from = rows.takeValue();
        const Value to = rows.takeValue();
        const bool erased = rows.takeOptionalInteger().has_value();
        const Value& digest = row.back().value;
        if (std::holds_alternative<std::monostate>(digest) || (erased && !salt)) {
            continue;
        }
        if (!salt || Value(digestOf({{}, *salt, from, to})) != digest) {
            complaints.push_back({Fault::changedValue, place, {}});
        }
    }
    const ChainEnd end = chainEnd(connection);
    if (end.last != expected || end.chain != chain) {
        complaints.push_back({Fault::brokenChain, "change_end", "rows at the end are missing"});
    }
}

struct Query {
    Fault fault;
    const char* table;
    const char* detail;
    /// A statement that gives the keys of what is wrong; {higher} and {lower}: the kinds of which
    /// that end is the best.
    const char* keys;
};

constexpr Query queries[] = {
    {Fault::orphan, "plan", "never issued", "SELECT id FROM plan WHERE issued = 0"},
    {Fault::orphan, "stimulator", "a copy that was never sealed",
     "SELECT id FROM stimulator WHERE copy_of IS NOT NULL AND sealed = 0"},
    {Fault::orphan, "clinic_session", "never sealed",
     "SELECT id FROM clinic_session WHERE sealed = 0"},
    {Fault::orphan, "patient", "not in the caseload",
     "SELECT id FROM patient WHERE archived = 0 AND id NOT IN (SELECT patient FROM caseload_key)"},
    {Fault::orphan, "change_value", "without its row in the change record",
     "SELECT change FROM change_value WHERE change NOT IN (SELECT id FROM change_record)"},
    {Fault::orphan, "erasure", "not ended", "SELECT id FROM erasure WHERE under_way = 1"},
    {Fault::orphan, "erasure", "of a patient who is there",
     "SELECT id FROM erasure WHERE patient IN (SELECT id FROM patient)"},
    {Fault::orphan, "screening", "signed with a question left open",
     "SELECT id FROM screening WHERE signed_on IS NOT NULL AND EXISTS (SELECT question FROM "
     "screening_question WHERE screening = screening.id EXCEPT SELECT question FROM "
     "screening_answer WHERE screening = screening.id)"},
    {Fault::date, "course", "it ends before it starts",
     "SELECT id FROM course WHERE end_date < start_date"},
    {Fault::date, "diary_entry", "before the course starts",
     "SELECT diary_entry.id FROM diary_entry JOIN course ON course.id = diary_entry.course "
     "WHERE diary_entry.day < course.start_date AND diary_entry.withdrawn = 0"},
    {Fault::date, "diary_received", "the diary is known up to a day after it came",
     "SELECT id FROM diary_received WHERE through_date > received_on AND withdrawn = 0"},
    {Fault::date, "loan", "of a unit that was not back from the loan before",
     "SELECT later.id FROM loan later JOIN loan earlier ON earlier.unit = later.unit "
     "AND earlier.id < later.id WHERE earlier.given_back_on IS NULL "
     "OR earlier.given_back_on > later.lent_on"},
    {Fault::date, "patient", "born after the record began",
     "SELECT patient.id FROM patient JOIN course ON course.patient = patient.id "
     "WHERE patient.birth_date > course.start_date"},
    {Fault::date, "measurement", "before the patient was born",
     "SELECT measurement.id FROM measurement JOIN course ON course.id = measurement.course "
     "JOIN patient ON patient.id = course.patient "
     "WHERE measurement.measured_on < patient.birth_date AND measurement.withdrawn = 0"},
    {Fault::value, "measurement", "it is not what its trials make",
     "SELECT id FROM measurement LEFT JOIN (SELECT measurement AS owner, count(*) AS trials, "
     "sum(value_thousandths) AS total, min(value_thousandths) AS least, "
     "max(value_thousandths) AS most FROM measurement_trial GROUP BY measurement) ON owner = id "
     "WHERE CASE counted WHEN 'one' THEN trials IS NOT NULL WHEN 'best' THEN trials IS NULL "
     "OR trials < 2 OR value_thousandths NOT IN (CASE WHEN kind IN ({higher}) THEN most ELSE least "
     "END, CASE WHEN kind IN ({lower}) THEN least ELSE most END) ELSE trials IS NULL OR trials < 2 "
     "OR value_thousandths <> (total + CASE WHEN total < 0 THEN -(trials / 2) ELSE trials / 2 END) "
     "/ trials END"},
};

/// The keys of the kinds of which that end is the best, as a list.
std::string kindsThatAre(Better better)
{
    std::string keys;
    for (const MeasurementKind& kind : measurementKinds()) {
        if (kind.better == better) {
            keys += keys.empty() ? "'" : ", '";
            keys += kind.key;
            keys += "'";
        }
    }
    return keys;
}

std::string filledIn(std::string statement, std::string_view gap, const std::string& text)
{
    if (const auto place = statement.find(gap); place != std::string::npos) {
        statement.replace(place, gap.size(), text);
    }
    return statement;
}

void checkRows(const Connection& connection, Complaints& complaints)
{
    for (const Query& query : queries) {
        const std::string higher = filledIn(query.keys, "{higher}", kindsThatAre(Better::higher));
        Statement rows(connection, filledIn(higher, "{lower}", kindsThatAre(Better::lower)));
        while (rows.next()) {
            complaints.push_back({query.fault,
                                  query.table + (" " + std::to_string(rows.takeInteger())),
                                  query.detail});
        }
    }
}

} // namespace

std::vector<Complaint> verify(Reading& reading)
{
    const Connection& connection = reading.connection();
    Complaints complaints;
    checkPages(connection, complaints);
    if (!complaints.empty()) {
        return complaints; // what else is read from damaged pages says nothing
    }
    checkReferences(connection, complaints);
    checkSchema(connection, complaints);
    checkPlans(connection, complaints);
    checkMissingPlans(connection, complaints);
    checkChain(connection, complaints);
    checkRows(connection, complaints);
    return complaints;
}

ChangeRecordEnd changeRecordEnd(Reading& reading)
{
    const ChainEnd end = chainEnd(reading.connection());
    return {end.last, end.chain};
}

} // namespace quadrille::db
