// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/loans.h"

#include "db/change_record.h"
#include "db/codec.h"
#include "db/course_parts.h"
#include "db/failure.h"
#include "db/rows.h"
#include "db/versions.h"

namespace quadrille::db
{

template <>
struct Kind<Loan> {
    static constexpr const char* table = "loan";
    static constexpr const char* columns =
        "loan.id, loan.unit, loan.course, loan.lent_on, loan.lent_by_name, loan.due_on, "
        "loan.given_back_on, loan.taken_back_by_name, loan.version";
    static constexpr const char* order = "lent_on, id";
    static Loan take(Statement& row)
    {
        Loan loan;
        loan.id = takeId<Loan>(row);
        loan.unit = takeId<LoanUnit>(row);
        loan.course = takeId<Course>(row);
        loan.lentOn = takeDate(row);
        loan.lentByName = row.takeText();
        loan.dueOn = takeOptionalDate(row);
        loan.givenBackOn = takeOptionalDate(row);
        loan.takenBackByName = row.takeText();
        loan.version = takeInt(row);
        return loan;
    }
    static Columns columnsOf(const Loan& loan)
    {
        return {{"due_on", valueOf(loan.dueOn)}, {"given_back_on", valueOf(loan.givenBackOn)}};
    }
};

namespace
{

constexpr const char* unitTable = "loan_unit";
constexpr const char* unitColumns =
    "loan_unit.id, loan_unit.stimulator, loan_unit.inventory_number, loan_unit.serial_number, "
    "loan_unit.next_safety_check_on, loan_unit.note, loan_unit.archived, loan_unit.version, "
    "stimulator.name";
constexpr const char* withPerson =
    " LEFT JOIN course ON course.id = loan.course LEFT JOIN patient ON patient.id = course.patient";

LoanUnit takeUnit(Statement& row)
{
    LoanUnit unit;
    unit.id = takeId<LoanUnit>(row);
    unit.stimulator = takeId<Stimulator>(row);
    unit.inventoryNumber = row.takeText();
    unit.serialNumber = row.takeText();
    unit.nextSafetyCheckOn = takeOptionalDate(row);
    unit.note = row.takeText();
    unit.archived = takeFlag(row);
    unit.version = takeInt(row);
    return unit;
}

Columns columnsOf(const LoanUnit& unit)
{
    return {{"stimulator", valueOf(unit.stimulator)},
            {"inventory_number", valueOf(unit.inventoryNumber)},
            {"serial_number", valueOf(unit.serialNumber)},
            {"next_safety_check_on", valueOf(unit.nextSafetyCheckOn)},
            {"note", valueOf(unit.note)},
            {"archived", valueOf(unit.archived)}};
}

/// `source`: what stands after FROM, with loan_unit, stimulator, loan, course and patient in it.
std::vector<InventoryRow> rowsFrom(const Connection& connection, const std::string& source,
                                   const std::vector<Value>& values)
{
    std::vector<InventoryRow> inventory;
    Statement rows(connection, std::string("SELECT ") + unitColumns +
                                   ", patient.id, patient.name, patient.reference, "
                                   "course.problem, loan.id IS NOT NULL, " +
                                   Kind<Loan>::columns + " FROM " + source);
    rows.bind(values);
    while (rows.next()) {
        InventoryRow& row = inventory.emplace_back();
        row.unit = takeUnit(rows);
        row.stimulatorName = rows.takeText();
        row.patient = takeOptionalId<Patient>(rows);
        row.patientName = rows.takeOptionalText().value_or("");
        row.patientReference = rows.takeOptionalText().value_or("");
        row.problem = rows.takeOptionalText().value_or("");
        if (takeFlag(rows)) {
            row.loan = Kind<Loan>::take(rows);
        }
    }
    return inventory;
}

std::optional<LoanUnit> unitWith(Reading& reading, LoanUnitId id)
{
    const auto rows = rowsFrom(reading.connection(),
                               std::string("loan_unit JOIN stimulator ON stimulator.id = "
                                           "loan_unit.stimulator LEFT JOIN loan ON loan.unit = "
                                           "loan_unit.id AND loan.given_back_on IS NULL") +
                                   withPerson + " WHERE loan_unit.id = ?",
                               {valueOf(id)});
    return rows.empty() ? std::nullopt : std::optional(rows.front().unit);
}

[[noreturn]] void failOnField(ErrorCode code, Field field, const std::string& subject = {})
{
    throw Failure({.code = code, .subject = subject, .detail = {}, .field = field});
}

void requireSensible(Writing& writing, const LoanUnit& unit)
{
    requireFilled(unit.inventoryNumber, Field::inventoryNumber);
    if (!unit.stimulator) {
        failOnField(ErrorCode::notFilled, Field::stimulator, unit.inventoryNumber);
    }
    const auto holder =
        numberFrom(writing.connection(), "SELECT id FROM loan_unit WHERE inventory_number = ?",
                   {valueOf(unit.inventoryNumber)});
    if (holder && (!unit.id || unit.id->key() != *holder)) {
        failOnField(ErrorCode::notUnique, Field::inventoryNumber, unit.inventoryNumber);
    }
}

/// A loan that is over is not changed any more.
Loan openLoan(Writing& writing, const Loan& loan)
{
    Loan stored = storedPart(writing, loan);
    if (stored.givenBackOn) {
        throw Failure({.code = ErrorCode::refused,
                       .subject = {},
                       .detail = "the unit is back already",
                       .field = Field::givenBack});
    }
    return stored;
}

} // namespace

std::vector<LendingCourse> coursesToLendTo(Reading& reading, Date today)
{
    std::vector<LendingCourse> courses;
    Statement rows(
        reading.connection(),
        "SELECT course.id, patient.id, patient.name, patient.reference, course.problem, "
        "ifnull((SELECT stimulator FROM draft WHERE draft.course = course.id AND state = "
        "'saved'), (SELECT stimulator.copy_of FROM plan JOIN stimulator ON stimulator.id = "
        "plan.stimulator WHERE plan.course = course.id ORDER BY plan.number DESC LIMIT 1)), "
        "(SELECT count(*) FROM loan WHERE loan.course = course.id AND given_back_on IS NULL), "
        "course.start_date, (SELECT sum(block.weeks) FROM block WHERE block.plan = (SELECT id "
        "FROM plan WHERE plan.course = course.id ORDER BY plan.number DESC LIMIT 1)) "
        "FROM course JOIN patient ON patient.id = course.patient LEFT JOIN caseload_key key ON "
        "key.patient = patient.id WHERE patient.archived = 0 AND (course.end_date IS NULL OR "
        "course.end_date >= ?) "
        "ORDER BY key.name, patient.id, course.number");
    rows.bind({valueOf(today)});
    while (rows.next()) {
        LendingCourse& course = courses.emplace_back();
        course.course = takeId<Course>(rows);
        course.patient = takeId<Patient>(rows);
        course.patientName = rows.takeText();
        course.patientReference = rows.takeText();
        course.problem = rows.takeText();
        course.stimulator = takeOptionalId<Stimulator>(rows);
        course.unitsLent = takeInt(rows);
        course.startDate = takeDate(rows);
        if (const auto weeks = takeOptionalInt(rows)) {
            course.lastDay = course.startDate + std::chrono::days(7 * *weeks - 1);
        }
    }
    return courses;
}

std::vector<InventoryRow> inventory(Reading& reading)
{
    return rowsFrom(reading.connection(),
                    std::string("loan_unit JOIN stimulator ON stimulator.id = "
                                "loan_unit.stimulator LEFT JOIN loan ON loan.unit = loan_unit.id "
                                "AND loan.given_back_on IS NULL") +
                        withPerson + " ORDER BY loan_unit.inventory_number",
                    {});
}

std::vector<InventoryRow> unitsLentTo(Reading& reading, CourseId course)
{
    return rowsFrom(reading.connection(),
                    std::string("loan JOIN loan_unit ON loan_unit.id = loan.unit JOIN stimulator "
                                "ON stimulator.id = loan_unit.stimulator") +
                        withPerson +
                        " WHERE loan.course = ? AND loan.given_back_on IS NULL "
                        "ORDER BY loan.lent_on, loan.id",
                    {valueOf(course)});
}

std::vector<InventoryRow> loansOf(Reading& reading, LoanUnitId unit)
{
    return rowsFrom(reading.connection(),
                    std::string("loan JOIN loan_unit ON loan_unit.id = loan.unit JOIN stimulator "
                                "ON stimulator.id = loan_unit.stimulator") +
                        withPerson +
                        " WHERE loan.unit = ? ORDER BY loan.lent_on DESC, loan.id DESC",
                    {valueOf(unit)});
}

LoanUnitId addLoanUnit(Writing& writing, const LoanUnit& unit)
{
    LoanUnit added = unit;
    added.id.reset();
    requireSensible(writing, added);
    return LoanUnitId(addRecord(writing, {.kind = unitTable}, columnsOf(added)));
}

void changeLoanUnit(Writing& writing, const LoanUnit& unit)
{
    const auto before = unit.id ? unitWith(writing, *unit.id) : std::nullopt;
    if (!before) {
        throw Failure({.code = ErrorCode::notFound, .subject = unit.inventoryNumber, .detail = {}});
    }
    requireSensible(writing, unit);
    saveOver(writing, {.kind = unitTable, .id = unit.id->key()}, unit.version, columnsOf(*before),
             columnsOf(unit));
}

LoanId lend(Writing& writing, const Loan& loan)
{
    const auto unit = loan.unit ? unitWith(writing, *loan.unit) : std::nullopt;
    if (!unit) {
        throw Failure({.code = ErrorCode::notFound, .subject = unitTable, .detail = {}});
    }
    if (numberFrom(writing.connection(),
                   "SELECT id FROM loan WHERE unit = ? AND given_back_on IS NULL",
                   {valueOf(*loan.unit)})) {
        failOnField(ErrorCode::notUnique, Field::inventoryNumber, unit->inventoryNumber);
    }
    Loan added = loan;
    added.id.reset();
    added.givenBackOn.reset();
    Columns more = writerColumns(writing, "lent_by");
    append(more, {{"unit", valueOf(loan.unit)}, {"lent_on", valueOf(loan.lentOn)}});
    added.id = addPart(writing, added, more);
    // "Loan added" alone would not say what was handed out.
    recordChanged(writing, recordOf(writing, added), {},
                  {{"inventory_number", valueOf(unit->inventoryNumber)},
                   {"lent_on", valueOf(added.lentOn)},
                   {"due_on", valueOf(added.dueOn)}});
    return *added.id;
}

void changeLoan(Writing& writing, const Loan& loan)
{
    const Loan before = openLoan(writing, loan);
    Loan after = before;
    after.dueOn = loan.dueOn;
    saveOver(writing, recordOf(writing, loan), loan.version, Kind<Loan>::columnsOf(before),
             Kind<Loan>::columnsOf(after));
}

void takeBack(Writing& writing, const Loan& loan, Date givenBackOn)
{
    const Loan before = openLoan(writing, loan);
    Loan after = before;
    after.givenBackOn = givenBackOn;
    const Record record = recordOf(writing, loan);
    raiseVersion(writing, record, loan.version);
    Columns columns = Kind<Loan>::columnsOf(after);
    append(columns, writerColumns(writing, "taken_back_by"));
    updateRow(writing.connection(), record.kind, record.id, columns);
    recordChanged(writing, record, Kind<Loan>::columnsOf(before), Kind<Loan>::columnsOf(after));
}

} // namespace quadrille::db
