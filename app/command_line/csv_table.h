// SPDX-License-Identifier: GPL-3.0-or-later
// Comma-separated tables as RFC 4180 describes them: UTF-8 with or without a byte-order mark, rows
// that end with LF or CRLF, cells in quotes where they hold commas, quotes or line ends.
#pragma once

#include "core/result.h"

#include <QByteArray>
#include <QString>
#include <QStringList>

#include <vector>

namespace quadrille::app
{

struct CsvRow {
    int number = 0; ///< as a spreadsheet counts: the headings are row 1, blank rows count
    QStringList cells;
};

/// Every row has as many cells as there are columns; blank rows are left out.
struct CsvTable {
    QStringList columns; ///< without blanks around them
    std::vector<CsvRow> rows;
};

/// Reads a table. `name` is what errors call it. Error `badFormat`: not UTF-8, no headings, a
/// heading twice, a quote out of place, a row of another length than the headings.
Result<CsvTable> csvTableFrom(const QByteArray& bytes, const QString& name);
/// The same from a file; error `cannotRead`.
Result<CsvTable> csvTableFromFile(const QString& file);

/// One row as text, ending with LF; cells are put into quotes where they need them.
QString csvLine(const QStringList& cells);
/// The same for a file that somebody opens in a spreadsheet: a text that it would take for a
/// formula (it begins with = + − @, a tab or a line end) is led by an apostrophe, plain numbers are
/// left as they are. Source: OWASP, CSV Injection.
QString harmlessCsvLine(const QStringList& cells);

} // namespace quadrille::app
