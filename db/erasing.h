// SPDX-License-Identifier: GPL-3.0-or-later
// The one way in which a person's records leave the store.
#pragma once

#include "db/store.h"

namespace quadrille::db
{

/// Deletes everything of the patient, through the guards that a row in `erasure` opens, and records
/// the act. Failure notFound when there is no such patient, refused without a named author, and
/// refused on the field inventoryNumber, the numbers in `detail`, while units are lent to them.
void erasePatient(Writing& writing, PatientId patient, ErasureGround ground);

/// Writes the file anew without what was deleted and empties its log. Failure locked while another
/// program reads the file.
void scrub(const Connection& connection);

} // namespace quadrille::db
