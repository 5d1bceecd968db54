// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "db/backup.h"

#include "core/result.h"

#include <QString>

#include <vector>

namespace quadrille::app
{

/// Why a practice file can't be used, and, where a backup would help, which one: the latest of
/// `copies` (the latest first), with the command that restores it.
QString damageText(const Error& error, const QString& store,
                   const std::vector<db::DailyCopy>& copies, const QuantityText& text);

} // namespace quadrille::app
