// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/figures_verb.h"

#include "app/command_line/command_line.h"
#include "app/command_line/csv_table.h"
#include "app/command_line/figures_case.h"
#include "app/command_line/figures_table.h"
#include "app/command_line/verb_options.h"

#include <QCommandLineParser>

namespace quadrille::app
{

namespace
{

struct FiguresVerbWords {
    Q_DECLARE_TR_FUNCTIONS(FiguresVerbWords)
};

/// The computed columns, four to a line.
QString computedColumnsHelp()
{
    QStringList lines;
    const QStringList columns = computedColumns();
    for (qsizetype first = 0; first < columns.size(); first += 4) {
        lines.append(QStringLiteral("  ") + columns.mid(first, 4).join(QStringLiteral(", ")));
    }
    return lines.join(QStringLiteral(",\n"));
}

QString description()
{
    return FiguresVerbWords::
        tr("Computes timing, dose and fatigue of the settings in a table, one case a row, "
           "symmetric "
           "biphasic pulses.\n"
           "The table is comma-separated UTF-8 text with headings; its columns may stand in any "
           "order, decimals have a point:\n%1"
           "Other columns are kept as they are. Written are the same rows, followed by the "
           "columns\n%2.\n"
           "The last %3 come from a force–fatigue model with group values: they serve to compare "
           "settings that differ in off time or session length, never to predict a patient. They "
           "are empty outside 1 to 150 Hz, beyond 30,000 pulses in a contraction or 150 "
           "contractions a second, and where the "
           "first "
           "contraction has no force.\n"
           "Columns of these names that the table has already are left out and computed again. "
           "When a cell cannot be used, nothing is written.")
            .arg(inputColumnsHelp(), computedColumnsHelp(), QString::number(modelColumns().size()));
}

} // namespace

int figuresVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(description());
    parser.addPositionalArgument(QStringLiteral("CASES.csv"),
                                 FiguresVerbWords::tr("The table to read."));
    if (const auto end =
            endsAtOptions(parser, QStringLiteral("figures"), arguments, {}, 1, context)) {
        return *end;
    }
    const QStringList files = parser.positionalArguments();
    if (files.size() != 1) {
        return misuse(FiguresVerbWords::tr("Give one table: quadrille figures CASES.csv."),
                      context);
    }
    const Result<CsvTable> table = csvTableFromFile(files.first());
    if (!table) {
        return refuse(table.error(), context);
    }
    const Result<CsvTable> figures = withFigures(*table, files.first());
    if (!figures) {
        return refuse(figures.error(), context);
    }
    QString written = csvLine(figures->columns);
    for (const CsvRow& row : figures->rows) {
        written += csvLine(row.cells);
    }
    return give(written, context);
}

} // namespace quadrille::app
