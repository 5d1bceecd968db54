// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/fit_threshold_verb.h"

#include "app/command_line/command_line.h"
#include "app/command_line/csv_table.h"
#include "app/command_line/threshold_report.h"
#include "app/command_line/threshold_table.h"
#include "app/command_line/verb_options.h"

#include <QCommandLineParser>

namespace quadrille::app
{

namespace
{

struct FitThresholdWords {
    Q_DECLARE_TR_FUNCTIONS(FitThresholdWords)
};

QString description()
{
    return FitThresholdWords::tr(
               "Fits rheobase and chronaxie to thresholds that were measured at several phase "
               "durations, one threshold a row: Weiss’ law with the least squares of the current "
               "and with those of the charge, and Lapicque’s law.\n"
               "The table is comma-separated UTF-8 text with headings; its columns may stand in "
               "any order, decimals have a point:\n%1"
               "Other columns are ignored. A duration may be there several times; at least two "
               "must differ. When a cell cannot be used, nothing is written.\n"
               "With --json each site is an object in the list “fits” (weissq is Weiss’ law on "
               "charge; null where a law does not fit):\n%2\n"
               "and “thresholds”, a list with phase_duration_us, threshold_ma and, measured − "
               "fitted, weiss_residual_ma, weissq_residual_ma, lapicque_residual_ma. A law has "
               "either _findings, a list with what, source and advice, or _problem.")
        .arg(thresholdColumnsHelp(), jsonFiguresHelp());
}

Result<std::vector<SiteFits>> fitsFromFile(const QString& file)
{
    const Result<CsvTable> table = csvTableFromFile(file);
    if (!table) {
        return table.error();
    }
    const auto series = thresholdSeriesFrom(*table, file);
    if (!series) {
        return series.error();
    }
    return fitsOf(*series, file);
}

} // namespace

int fitThresholdVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(description());
    const QCommandLineOption json(QStringLiteral("json"),
                                  FitThresholdWords::tr("Write JSON for programs."));
    parser.addOption(json);
    parser.addPositionalArgument(QStringLiteral("FILE.csv"),
                                 FitThresholdWords::tr("The table to read."));
    if (const auto end =
            endsAtOptions(parser, QStringLiteral("fit-threshold"), arguments, {}, 1, context)) {
        return *end;
    }
    const QStringList files = parser.positionalArguments();
    if (files.size() != 1) {
        return misuse(FitThresholdWords::tr("Give one table: quadrille fit-threshold FILE.csv."),
                      context);
    }
    const auto fits = fitsFromFile(files.first());
    if (!fits) {
        return refuse(fits.error(), context);
    }
    return give(parser.isSet(json) ? QString::fromUtf8(fitsAsJson(*fits))
                                   : fitsAsText(*fits, QuantityText(QLocale())),
                context);
}

} // namespace quadrille::app
