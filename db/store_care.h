// SPDX-License-Identifier: GPL-3.0-or-later
// What SQLite offers past its SQL: the backup interface. The only file that includes sqlite3.h.
#pragma once

#include "db/sql.h"

#include <QString>

namespace quadrille::db
{

/// Copies the whole database as one consistent view into `target`, an empty file that is there. The
/// copy needs no other file beside it. Others may go on writing meanwhile. Throws SqlError.
void copyDatabase(const Connection& source, const QString& target);

} // namespace quadrille::db
