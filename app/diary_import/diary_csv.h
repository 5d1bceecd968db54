// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of diaries as RFC 4180 describes them, and as spreadsheets write them: cells between
// commas, semicolons or tabs, rows that end with LF, CRLF or CR, cells in quotes where they hold
// separators, quotes or line ends.
#pragma once

#include "app/diary_import/diary_table.h"

#include "core/result.h"

#include <QByteArray>
#include <QString>

#include <functional>

namespace quadrille::app
{

/// Asked now and then with the share that is read, 0 … 1; false stops.
using ReadOn = std::function<bool(double share)>;

/// A cell with more is no diary's; usually a quote that is never closed.
inline constexpr std::size_t mostCellBytes = 1U << 16U;

/// The separator that makes most known headings of the first row, else most cells.
char separatorOf(const QByteArray& utf8);

/// The first row names the columns; blank rows are left out. Rows may have other lengths than the
/// headings: that is for who reads them. Errors: badFormat (NUL, a quote out of place, a cell that
/// is too long, no headings, a heading twice), refused where `readOn` stopped it.
Result<DiaryTable> diaryTableFromCsv(const QByteArray& utf8, char separator, const QString& name,
                                     const ReadOn& readOn = {});

} // namespace quadrille::app
