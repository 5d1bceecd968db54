// SPDX-License-Identifier: GPL-3.0-or-later
// Finding people whatever way a name is typed.
#pragma once

#include <QString>

namespace quadrille::app
{

/// Small letters without accents, other signs as blanks: "Lucía Ferñ-Vale" becomes "lucia fern
/// vale". Letters that no accent makes (ø, ł, ß, æ …) become the letters people type for them.
QString folded(const QString& text);

/// True when every word of `wanted` stands somewhere in `searchable` (both as folded() leaves
/// them), in any order. Nothing wanted matches all.
bool matches(const QString& searchable, const QString& wanted);

} // namespace quadrille::app
