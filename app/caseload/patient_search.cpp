// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/patient_search.h"

#include "db/caseload_key.h"

#include <algorithm>

namespace quadrille::app
{

QStringList wantedWords(const QString& typed)
{
    return db::foldedWords(typed).split(QLatin1Char(' '), Qt::SkipEmptyParts);
}

bool matches(const QString& searchable, const QStringList& wanted)
{
    return std::all_of(wanted.begin(), wanted.end(),
                       [&](const QString& word) { return searchable.contains(word); });
}

} // namespace quadrille::app
