// SPDX-License-Identifier: GPL-3.0-or-later
// A row of a patient, for the repository and for the caseload.
#pragma once

#include "db/sql.h"

#include "core/people.h"

namespace quadrille::db
{

/// In the order in which takePatient reads them.
inline constexpr const char* patientColumns =
    "patient.id, patient.reference, patient.name, patient.birth_date, patient.telephone, "
    "patient.note, patient.archived";
Patient takePatient(Statement& row);

} // namespace quadrille::db
