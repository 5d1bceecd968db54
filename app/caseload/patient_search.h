// SPDX-License-Identifier: GPL-3.0-or-later
// Finding people whatever way a name is typed.
#pragma once

#include <QString>
#include <QStringList>

namespace quadrille::app
{

/// The words of what was typed, folded as those that are searched (db/caseload_key.h).
QStringList wantedWords(const QString& typed);

/// True when every word wanted stands somewhere in `searchable`, in any order. Nothing wanted
/// matches all.
bool matches(const QString& searchable, const QStringList& wanted);

} // namespace quadrille::app
