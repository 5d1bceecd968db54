// SPDX-License-Identifier: GPL-3.0-or-later
// A diary as JSON (RFC 8259), with the names and units of the columns:
//
//   {"format": "quadrille-diary", "version": 1,
//    "entries": [{"date": "2026-03-09", "session": 1, "minutes": 20, "contractions": 75,
//                 "amplitude_ma_channel_1": 42.5, "comfort": 7, "skin": 0, "pad": "lower",
//                 "remark": "…"}]}
//
// A day is YYYY-MM-DD (ISO 8601). What is left out or null is not known.
#pragma once

#include "app/diary_import/diary_table.h"

#include "core/result.h"

#include <QByteArray>
#include <QString>

namespace quadrille::app
{

/// Whether a file looks like JSON rather than like a table.
bool looksLikeJson(const QByteArray& bytes);

/// The entries as a table whose headings are the names; lines are numbers of entries. Error
/// badFormat: no JSON, another format or version, a name that is none, a value of another kind.
Result<DiaryTable> diaryTableFromJson(const QByteArray& bytes, const QString& name);

/// The names of all members of an entry, for help.
QString diaryJsonHelp();

} // namespace quadrille::app
