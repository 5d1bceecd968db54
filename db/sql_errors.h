// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/sql.h"

#include "core/result.h"

namespace quadrille::db
{

/// What the database complains of, as an Error: locked, diskFull, readOnly, cannotOpen, notAStore,
/// storeDamaged, notUnique, notFound, refused, outOfRange or storeFailed. `subject` is left empty.
Error errorOf(const SqlError& error);

} // namespace quadrille::db
