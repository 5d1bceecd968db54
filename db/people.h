// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of the practice, its practitioners and its patients. Called inside Store::read and
// Store::write; what fails throws and comes back as the Error of those.
#pragma once

#include "db/store.h"

#include "core/people.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille::db
{

/// The practice that owns the store; nothing until it has been entered.
std::optional<Practice> practice(Reading& reading);
void savePractice(Writing& writing, const Practice& practice);

/// All, archived ones last, by name.
std::vector<Practitioner> practitioners(Reading& reading);
PractitionerId addPractitioner(Writing& writing, const Practitioner& practitioner);
void changePractitioner(Writing& writing, const Practitioner& practitioner);

std::optional<Patient> patient(Reading& reading, PatientId id);
std::optional<Patient> patientByReference(Reading& reading, const std::string& reference);
/// notUnique when another patient has the reference.
PatientId addPatient(Writing& writing, const Patient& patient);
/// `patient.id` must be filled.
void changePatient(Writing& writing, const Patient& patient);
/// A reference that no patient has yet, counting on from the highest number in use: "1001", "1002"
/// …
std::string nextReference(Reading& reading);

} // namespace quadrille::db
