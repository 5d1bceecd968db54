// SPDX-License-Identifier: GPL-3.0-or-later
// The table of `quadrille figures`.
#include "app/command_line/figures_table.h"
#include "tests/fuzz/tables.h"

using namespace quadrille;
using namespace quadrille::app;

namespace
{

QByteArray written(const CsvTable& table)
{
    QString text = csvLine(table.columns);
    for (const CsvRow& row : table.rows) {
        text += csvLine(row.cells);
    }
    return text.toUtf8();
}

} // namespace

/// What the command writes can be read again and says the same.
void quadrille::test::readInput(std::string_view input)
{
    const QString name = QStringLiteral("table.csv");
    const Result<CsvTable> table = csvTableFrom(bytesOf(input), name);
    if (!table) {
        requireSentence(table.error());
        return;
    }
    requireWellFormed(*table);
    const Result<CsvTable> figures = withFigures(*table, name);
    if (!figures) {
        requireSentence(figures.error());
        return;
    }
    const QByteArray first = written(*figures);
    const Result<CsvTable> again = csvTableFrom(first, name);
    require(again.has_value());
    const Result<CsvTable> twice = withFigures(*again, name);
    require(twice.has_value());
    require(written(*twice) == first);
}
