// SPDX-License-Identifier: GPL-3.0-or-later
// The change record in words of the trade.
#pragma once

#include "app/words/quantity_text.h"

#include "db/history.h"

#include <QString>

namespace quadrille::app
{

/// What a change concerns: "Patient · Telephone", "Draft · Block 1, site 2, on time", or for a
/// whole record "Course added".
QString changeText(const db::Change& change);

/// An old or a new value as the field is shown elsewhere: "4 s", "9 Feb 2026", "yes". A dash for
/// nothing.
QString changedValueText(const db::Change& change, const std::optional<std::string>& value,
                         const QuantityText& text);

/// "12 Mar 2026, 10:42", in the time zone of this machine.
QString changeMomentText(const db::Change& change, const QuantityText& text);

} // namespace quadrille::app
