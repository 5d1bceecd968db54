// SPDX-License-Identifier: GPL-3.0-or-later
// A row of a patient, for the repository and for the caseload.
#pragma once

#include "db/sql.h"

#include "core/people.h"

#include <cstdint>
#include <string_view>
#include <vector>

namespace quadrille::db
{

/// In the order in which takePatient reads them.
inline constexpr const char* patientColumns =
    "patient.id, patient.reference, patient.name, patient.birth_date, patient.telephone, "
    "patient.note, patient.archived, patient.email, patient.address, patient.contact_person, "
    "patient.height_mm, patient.language, patient.version";
Patient takePatient(Statement& row);

/// The lengths in `table` whose column `owner` is `key`, in order.
std::vector<SegmentLength> takeSegmentLengths(const Connection& connection, std::string_view table,
                                              std::string_view owner, std::int64_t key);
void addSegmentLengths(const Connection& connection, std::string_view table, std::string_view owner,
                       std::int64_t key, const std::vector<SegmentLength>& lengths);

} // namespace quadrille::db
