// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/people.h"

#include "db/caseload_key.h"
#include "db/change_record.h"
#include "db/codec.h"
#include "db/failure.h"
#include "db/patient_rows.h"
#include "db/versions.h"

#include <algorithm>

namespace quadrille::db
{

namespace
{

constexpr std::int64_t practiceKey = 1;
constexpr const char* practitionerColumns =
    "id, name, registration_number, initials, archived, version";

Columns columnsOf(const Practice& practice)
{
    return {
        {"name", valueOf(practice.name)},
        {"address", valueOf(practice.address)},
        {"telephone", valueOf(practice.telephone)},
        {"emergency_number", valueOf(practice.emergencyNumber)},
    };
}

Columns columnsOf(const Practitioner& practitioner)
{
    return {
        {"name", valueOf(practitioner.name)},
        {"registration_number", valueOf(practitioner.registrationNumber)},
        {"initials", valueOf(practitioner.initials)},
        {"archived", valueOf(practitioner.archived)},
    };
}

Practitioner takePractitioner(Statement& row)
{
    Practitioner practitioner;
    practitioner.id = takeId<Practitioner>(row);
    practitioner.name = row.takeText();
    practitioner.registrationNumber = row.takeText();
    practitioner.initials = row.takeText();
    practitioner.archived = takeFlag(row);
    practitioner.version = takeInt(row);
    return practitioner;
}

Columns columnsOf(const Patient& patient)
{
    return {
        {"reference", valueOf(patient.reference)},
        {"name", valueOf(patient.name)},
        {"birth_date", valueOf(patient.birthDate)},
        {"telephone", valueOf(patient.telephone)},
        {"note", valueOf(patient.note)},
        {"archived", valueOf(patient.archived)},
        {"email", valueOf(patient.email)},
        {"address", valueOf(patient.address)},
        {"contact_person", valueOf(patient.contactPerson)},
        {"height_mm", valueOf(patient.height)},
        {"language", valueOf(patient.language)},
    };
}

/// The whole patient, for the change record.
Columns allColumnsOf(const Patient& patient)
{
    Columns columns = columnsOf(patient);
    for (const SegmentLength& length : patient.segmentLengths) {
        columns.push_back({"segment_lengths." + std::string(wordOf(length.side)) + "." +
                               std::string(wordOf(length.segment)),
                           valueOf(length.length)});
    }
    return columns;
}

std::optional<Patient> patientWhere(Reading& reading, const std::string& condition,
                                    const Value& value)
{
    Statement row(reading.connection(),
                  std::string("SELECT ") + patientColumns + " FROM patient WHERE " + condition);
    row.bind({value});
    if (!row.next()) {
        return std::nullopt;
    }
    Patient patient = takePatient(row);
    patient.segmentLengths =
        takeSegmentLengths(reading.connection(), "segment_length", "patient", patient.id->key());
    return patient;
}

void requireSensible(Reading& reading, const Patient& patient)
{
    requireFilled(patient.reference, Field::reference);
    requireFilled(patient.name, Field::name);
    const auto holder = patientByReference(reading, patient.reference);
    if (holder && holder->id != patient.id) {
        throw Failure({.code = ErrorCode::notUnique,
                       .subject = patient.reference,
                       .detail = {},
                       .field = Field::reference});
    }
}

} // namespace

std::optional<Practice> practice(Reading& reading)
{
    Statement row(reading.connection(),
                  "SELECT name, address, telephone, emergency_number, version FROM practice");
    if (!row.next()) {
        return std::nullopt;
    }
    Practice practice;
    practice.name = row.takeText();
    practice.address = row.takeText();
    practice.telephone = row.takeText();
    practice.emergencyNumber = row.takeText();
    practice.version = takeInt(row);
    return practice;
}

void savePractice(Writing& writing, const Practice& saved)
{
    const Record record{.kind = "practice", .id = practiceKey};
    const auto before = practice(writing);
    Columns columns = columnsOf(saved);
    if (before) {
        saveOver(writing, record, saved.version, columnsOf(*before), columns);
        return;
    }
    columns.push_back({"id", valueOf(practiceKey)});
    insertRow(writing.connection(), "practice", columns);
    recordCreated(writing, record);
}

std::vector<Practitioner> practitioners(Reading& reading)
{
    std::vector<Practitioner> all;
    Statement rows(reading.connection(), std::string("SELECT ") + practitionerColumns +
                                             " FROM practitioner ORDER BY archived, lower(name), "
                                             "name, id");
    while (rows.next()) {
        all.push_back(takePractitioner(rows));
    }
    return all;
}

PractitionerId addPractitioner(Writing& writing, const Practitioner& practitioner)
{
    requireFilled(practitioner.name, Field::name);
    const std::int64_t id =
        insertRow(writing.connection(), "practitioner", columnsOf(practitioner));
    recordCreated(writing, {.kind = "practitioner", .id = id});
    return PractitionerId(id);
}

void changePractitioner(Writing& writing, const Practitioner& changed)
{
    const auto all = practitioners(writing);
    const auto before = std::ranges::find(all, changed.id, &Practitioner::id);
    if (!changed.id || before == all.end()) {
        throw Failure({.code = ErrorCode::notFound, .subject = changed.name, .detail = {}});
    }
    requireFilled(changed.name, Field::name);
    saveOver(writing, {.kind = "practitioner", .id = changed.id->key()}, changed.version,
             columnsOf(*before), columnsOf(changed));
}

std::optional<Patient> patient(Reading& reading, PatientId id)
{
    return patientWhere(reading, "id = ?", valueOf(id));
}

std::optional<Patient> patientByReference(Reading& reading, const std::string& reference)
{
    return patientWhere(reading, "reference = ?", valueOf(reference));
}

PatientId addPatient(Writing& writing, const Patient& patient)
{
    Patient added = patient;
    added.id.reset();
    requireSensible(writing, added);
    // A key that an erasure has freed is never given again: the change record still names it.
    const auto highest =
        numberFrom(writing.connection(), "SELECT max(ifnull((SELECT max(id) FROM patient), 0), "
                                         "ifnull((SELECT max(patient) FROM erasure), 0))");
    const PatientId id(highest.value_or(0) + 1);
    Columns columns = columnsOf(added);
    columns.push_back({"id", valueOf(id)});
    addRecord(writing, {.kind = "patient", .patient = id}, columns);
    addSegmentLengths(writing.connection(), "segment_length", "patient", id.key(),
                      added.segmentLengths);
    refreshCaseloadKey(writing.connection(), id);
    return id;
}

void changePatient(Writing& writing, const Patient& changed)
{
    const auto before = changed.id ? patient(writing, *changed.id) : std::nullopt;
    if (!before) {
        throw Failure({.code = ErrorCode::notFound, .subject = changed.reference, .detail = {}});
    }
    if (allColumnsOf(changed) == allColumnsOf(*before)) {
        return;
    }
    requireSensible(writing, changed);
    const Record record{.kind = "patient", .id = changed.id->key(), .patient = changed.id};
    raiseVersion(writing, record, changed.version);
    updateRow(writing.connection(), "patient", record.id, columnsOf(changed));
    Statement(writing.connection(), "DELETE FROM segment_length WHERE patient = ?")
        .bind({record.id})
        .run();
    addSegmentLengths(writing.connection(), "segment_length", "patient", record.id,
                      changed.segmentLengths);
    recordChanged(writing, record, allColumnsOf(*before), allColumnsOf(changed));
    refreshCaseloadKey(writing.connection(), *changed.id);
}

std::string nextReference(Reading& reading)
{
    constexpr std::int64_t firstReference = 1001;
    const auto highest = numberFrom(reading.connection(),
                                    "SELECT max(CAST(reference AS INTEGER)) FROM patient WHERE " +
                                        dialect::isWholeNumber("reference"));
    return std::to_string(highest ? *highest + 1 : firstReference);
}

} // namespace quadrille::db
