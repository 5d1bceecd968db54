// SPDX-License-Identifier: GPL-3.0-or-later
// What finds a patient and orders the caseload, kept beside the records that it is made of.
#pragma once

#include "db/sql.h"

#include "core/ids.h"

#include <QString>

#include <string>

namespace quadrille::db
{

/// Small letters without accents, other signs as blanks: "Lucía Ferñ-Vale" becomes "lucia fern
/// vale". Letters that no accent makes (ø, ł, ß, æ …) become the letters people type for them.
QString foldedWords(const QString& text);

/// Computes the key of one patient again; to be called by whatever saves a patient, a course or a
/// plan, in the same transaction. An archived patient has none.
void refreshCaseloadKey(const Connection& connection, PatientId patient);
/// The keys of all patients, from nothing.
void refreshCaseloadKeys(const Connection& connection);

} // namespace quadrille::db
