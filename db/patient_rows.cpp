// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/patient_rows.h"

#include "db/codec.h"

namespace quadrille::db
{

Patient takePatient(Statement& row)
{
    Patient patient;
    patient.id = takeId<Patient>(row);
    patient.reference = row.takeText();
    patient.name = row.takeText();
    patient.birthDate = takeDate(row);
    patient.telephone = row.takeText();
    patient.note = row.takeText();
    patient.archived = takeFlag(row);
    return patient;
}

} // namespace quadrille::db
