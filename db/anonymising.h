// SPDX-License-Identifier: GPL-3.0-or-later
// A copy of a store that says nothing of anybody, for those who look for a fault in the program.
#pragma once

#include "core/result.h"

#include <QString>

#include <chrono>

namespace quadrille::db
{

/// A number of whole weeks to shift dates by, one to ten years back, never the same twice.
std::chrono::days randomShift();

/// Writes to `out`, a name that is free: every row and key, every choice and amount; all dates
/// shifted by `shift`; instead of names and every free text a stand-in; forms that were kept
/// unsaved are left out. The copy is a store that verifies. Errors: those of writeBackup.
Result<void> anonymise(const QString& store, const QString& out, std::chrono::days shift);

} // namespace quadrille::db
