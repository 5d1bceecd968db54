// SPDX-License-Identifier: GPL-3.0-or-later
// Units and loans in words.
#pragma once

#include "app/words/quantity_text.h"

#include "db/loans.h"

#include <QString>

namespace quadrille::app
{

/// "Agnes Thorley (1001), knee replacement"; empty while the unit is here.
QString holderText(const db::InventoryRow& row);
/// "6 Apr 2026", "3 days overdue, 9 Mar 2026"; a dash where no day is known.
QString dueText(const std::optional<Date>& due, Date today, const QuantityText& text);
/// One loan on a line: "9 Feb 2026 to 2 Mar 2026: Agnes Thorley (1001), knee replacement · lent by
/// Ruta Vennel · taken back by Anselm Orrick".
QString pastLoanText(const db::InventoryRow& row, const QuantityText& text);

} // namespace quadrille::app
