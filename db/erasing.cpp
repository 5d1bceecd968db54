// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/erasing.h"

#include "db/change_record.h"
#include "db/codec.h"
#include "db/failure.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille::db
{

namespace
{

const char* wordOfGround(ErasureGround ground)
{
    switch (ground) {
    case ErasureGround::request:
        return "request";
    case ErasureGround::retentionOver:
        return "retention_over";
    case ErasureGround::enteredInError:
        break;
    }
    return "entered_in_error";
}

// Each "?" is the patient. Parts before what they belong to; courses nearly last, because the
// guards look for them.
constexpr std::array deletions{
    "DELETE FROM clinic_threshold WHERE site IN (SELECT clinic_site.id FROM clinic_site JOIN "
    "clinic_session ON clinic_session.id = clinic_site.clinic_session WHERE clinic_session.course "
    "IN (SELECT id FROM course WHERE patient = ?))",
    "DELETE FROM clinic_site WHERE clinic_session IN (SELECT id FROM clinic_session WHERE course "
    "IN (SELECT id FROM course WHERE patient = ?))",
    "DELETE FROM clinic_session WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM kept_form WHERE form IN (SELECT 'measurements/' || id FROM course WHERE "
    "patient = ?) OR form IN (SELECT 'pads/new/' || id FROM course WHERE patient = ?)",
    "DELETE FROM kept_form WHERE form IN (SELECT 'measurement/' || id FROM measurement WHERE "
    "course IN (SELECT id FROM course WHERE patient = ?)) OR form IN (SELECT 'pads/' || id FROM "
    "electrode_set WHERE course IN (SELECT id FROM course WHERE patient = ?))",
    "DELETE FROM diary_amplitude WHERE entry IN (SELECT id FROM diary_entry WHERE course IN "
    "(SELECT id FROM course WHERE patient = ?))",
    "DELETE FROM diary_entry WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM diary_day WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM diary_received WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM counter_reading WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM measurement_trial WHERE measurement IN (SELECT id FROM measurement WHERE course "
    "IN (SELECT id FROM course WHERE patient = ?))",
    "DELETE FROM measurement WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM follow_up WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM printed_document WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM electrode_set WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM loan WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM screening_override WHERE screening IN (SELECT id FROM screening WHERE course IN "
    "(SELECT id FROM course WHERE patient = ?))",
    "DELETE FROM skin_test WHERE screening IN (SELECT id FROM screening WHERE course IN "
    "(SELECT id FROM course WHERE patient = ?))",
    "DELETE FROM screening_place WHERE screening IN (SELECT id FROM screening WHERE course IN "
    "(SELECT id FROM course WHERE patient = ?))",
    "DELETE FROM screening_question WHERE screening IN (SELECT id FROM screening WHERE course IN "
    "(SELECT id FROM course WHERE patient = ?))",
    "DELETE FROM screening_answer WHERE screening IN (SELECT id FROM screening WHERE course IN "
    "(SELECT id FROM course WHERE patient = ?))",
    "DELETE FROM screening WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM pause WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM pad WHERE site IN (SELECT site.id FROM site JOIN block ON block.id = site.block "
    "JOIN plan ON plan.id = block.plan JOIN course ON course.id = plan.course "
    "WHERE course.patient = ?)",
    "DELETE FROM site WHERE block IN (SELECT block.id FROM block JOIN plan ON plan.id = block.plan "
    "JOIN course ON course.id = plan.course WHERE course.patient = ?)",
    "DELETE FROM block WHERE plan IN (SELECT plan.id FROM plan JOIN course ON "
    "course.id = plan.course WHERE course.patient = ?)",
    "DELETE FROM plan_segment_length WHERE plan IN (SELECT plan.id FROM plan JOIN course ON "
    "course.id = plan.course WHERE course.patient = ?)",
    "DELETE FROM plan WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    "DELETE FROM draft WHERE course IN (SELECT id FROM course WHERE patient = ?)",
    // Forms end with the key of their patient or course; one for somebody new may be of this
    // person.
    "DELETE FROM kept_form WHERE form IN ('patient/new', 'patient/' || ?, 'course/new/' || ?) "
    "OR form IN (SELECT 'course/' || id FROM course WHERE patient = ?) "
    "OR EXISTS (SELECT 1 FROM course WHERE patient = ? AND (kept_form.form IN ('clinic/' || "
    "course.id, 'diary/' || course.id) OR kept_form.form GLOB 'clinic/' || course.id || '/*' OR "
    "kept_form.form GLOB 'counter/' || course.id || '/*'))",
    "DELETE FROM change_value WHERE change IN (SELECT id FROM change_record WHERE patient = ?)",
    "DELETE FROM caseload_key WHERE patient = ?",
    "DELETE FROM course WHERE patient = ?",
    "DELETE FROM segment_length WHERE patient = ?",
    "DELETE FROM patient WHERE id = ?",
};

/// A unit in somebody's home is found again through its loan.
void requireUnitsBack(const Connection& connection, PatientId patient)
{
    std::string numbers;
    Statement rows(connection,
                   "SELECT loan_unit.inventory_number FROM loan JOIN loan_unit ON loan_unit.id = "
                   "loan.unit JOIN course ON course.id = loan.course WHERE course.patient = ? AND "
                   "loan.given_back_on IS NULL ORDER BY loan_unit.inventory_number");
    rows.bind({valueOf(patient)});
    while (rows.next()) {
        numbers += numbers.empty() ? "" : ", ";
        numbers += rows.takeText();
    }
    if (!numbers.empty()) {
        throw Failure({.code = ErrorCode::refused,
                       .subject = {},
                       .detail = numbers,
                       .field = Field::inventoryNumber});
    }
}

} // namespace

void erasePatient(Writing& writing, PatientId patient, ErasureGround ground)
{
    const Connection& connection = writing.connection();
    if (!numberFrom(connection, "SELECT id FROM patient WHERE id = ?", {valueOf(patient)})) {
        throw Failure({.code = ErrorCode::notFound, .subject = "patient", .detail = {}});
    }
    if (writing.author().name.empty()) {
        throw Failure({.code = ErrorCode::refused,
                       .subject = {},
                       .detail = "somebody answers for an erasure by name"});
    }
    requireUnitsBack(connection, patient);
    const std::int64_t erasure =
        insertRow(connection, "erasure",
                  {{"patient", valueOf(patient)},
                   {"ground", std::string(wordOfGround(ground))},
                   {"made_at", valueOf(writing.moment())},
                   {"practitioner", valueOf(writing.author().practitioner)},
                   {"practitioner_name", valueOf(writing.author().name)},
                   {"under_way", valueOf(true)}});
    for (const char* deletion : deletions) {
        const auto marks = std::ranges::count(std::string_view(deletion), '?');
        Statement(connection, deletion)
            .bind(std::vector<Value>(static_cast<std::size_t>(marks), valueOf(patient)))
            .run();
    }
    updateRow(connection, "erasure", erasure, {{"under_way", valueOf(false)}});
    recordRemoved(writing, {.kind = "patient", .id = patient.key(), .patient = patient});
}

void scrub(const Connection& connection)
{
    run(connection, dialect::overwriteDeleted);
    run(connection, dialect::writeAnew);
    Statement emptied(connection, dialect::emptyLog);
    // Its first column says whether somebody still reads from the log.
    if (!emptied.next() || emptied.takeInteger() != 0) {
        throw Failure({.code = ErrorCode::locked, .subject = {}, .detail = "the log is in use"});
    }
}

} // namespace quadrille::db
