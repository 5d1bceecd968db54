// SPDX-License-Identifier: GPL-3.0-or-later
// The table of `quadrille fit-threshold`.
#include "app/command_line/threshold_report.h"
#include "app/command_line/threshold_table.h"
#include "tests/fuzz/tables.h"

#include <QJsonDocument>

#include <cmath>

using namespace quadrille;
using namespace quadrille::app;
using quadrille::test::require;

namespace
{

/// A fit has constants above 0 and a residual for each threshold.
void requireMeaningful(const StrengthDurationFit& fit, const ThresholdSeries& series)
{
    require(std::isfinite(fit.rheobase.shown()) && fit.rheobase.shown() > 0.0);
    require(std::isfinite(fit.chronaxie.shown()) && fit.chronaxie.shown() > 0.0);
    require(std::isfinite(fit.rmse.shown()) && fit.rmse.shown() >= 0.0);
    require(fit.residuals.size() == series.points.size());
}

} // namespace

void quadrille::test::readInput(std::string_view input)
{
    const QString name = QStringLiteral("table.csv");
    const Result<CsvTable> table = csvTableFrom(bytesOf(input), name);
    if (!table) {
        requireSentence(table.error());
        return;
    }
    requireWellFormed(*table);
    const auto series = thresholdSeriesFrom(*table, name);
    if (!series) {
        requireSentence(series.error());
        return;
    }
    const auto fits = fitsOf(*series, name);
    if (!fits) {
        requireSentence(fits.error());
        return;
    }
    for (const SiteFits& site : *fits) {
        for (const LawFit& law : site.laws) {
            if (law.fit) {
                requireMeaningful(*law.fit, site.series);
            }
        }
    }
    require(!fitsAsText(*fits, QuantityText(QLocale::c())).isEmpty());
    require(QJsonDocument::fromJson(fitsAsJson(*fits)).isObject());
}
