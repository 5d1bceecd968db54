// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/threshold_table.h"

#include "app/command_line/exact_decimal.h"
#include "app/words/bad_format.h"

#include "core/settings.h"

#include <QCoreApplication>

#include <algorithm>
#include <cstdint>
#include <optional>

namespace quadrille::app
{

namespace
{

struct ThresholdTableWords {
    Q_DECLARE_TR_FUNCTIONS(ThresholdTableWords)
};

QString durationColumn()
{
    return QStringLiteral("phase_duration_us");
}

QString thresholdColumn()
{
    return QStringLiteral("threshold_ma");
}

QString siteColumn()
{
    return QStringLiteral("site");
}

CountRange durationBounds()
{
    return arithmeticBounds(Field::phaseDuration);
}

/// A threshold is an amplitude, but never 0.
CountRange thresholdBounds()
{
    CountRange bounds = arithmeticBounds(Field::lastToleratedAmplitude);
    bounds.least = 1;
    return bounds;
}

constexpr std::int64_t microamperes = 1000; // in a column's mA

QString expectedDuration()
{
    return ThresholdTableWords::tr("a whole number from %1 to %2")
        .arg(decimalFrom(durationBounds().least, 1), decimalFrom(durationBounds().most, 1));
}

QString expectedThreshold()
{
    return ThresholdTableWords::tr("a number from %1 to %2 with at most 3 decimals")
        .arg(decimalFrom(thresholdBounds().least, microamperes),
             decimalFrom(thresholdBounds().most, microamperes));
}

QString expectedSite()
{
    return ThresholdTableWords::tr("the name of the site");
}

QString cellOf(const CsvTable& table, const CsvRow& row, const QString& column)
{
    return row.cells.value(table.columns.indexOf(column)).trimmed();
}

/// In a sentence a cell stands on one line.
Error badCell(const QString& name, const CsvRow& row, const QString& column, const QString& cell,
              const QString& expected)
{
    return badFormat(
        name, ThresholdTableWords::tr("row %1, column %2: “%3” can’t be used; expected is %4")
                  .arg(QString::number(row.number), column, cell.simplified(), expected));
}

std::optional<std::int64_t> countIn(const QString& cell, std::int64_t parts,
                                    const CountRange& bounds)
{
    const auto count = countFromDecimal(cell.toStdString(), parts);
    return count && bounds.contains(*count) ? count : std::nullopt;
}

Result<ThresholdPoint> pointFrom(const CsvTable& table, const CsvRow& row, const QString& name)
{
    const QString duration = cellOf(table, row, durationColumn());
    const auto durationCount = countIn(duration, 1, durationBounds());
    if (!durationCount) {
        return badCell(name, row, durationColumn(), duration, expectedDuration());
    }
    const QString threshold = cellOf(table, row, thresholdColumn());
    const auto thresholdCount = countIn(threshold, microamperes, thresholdBounds());
    if (!thresholdCount) {
        return badCell(name, row, thresholdColumn(), threshold, expectedThreshold());
    }
    return ThresholdPoint{PhaseDuration::fromCount(*durationCount),
                          Amplitude::fromCount(*thresholdCount)};
}

std::vector<ThresholdPoint>& pointsOf(std::vector<ThresholdSeries>& series, const QString& site)
{
    const auto found = std::ranges::find(series, site, &ThresholdSeries::site);
    return found != series.end() ? found->points
                                 : series.emplace_back(ThresholdSeries{site, {}}).points;
}

} // namespace

QString thresholdColumnsHelp()
{
    QString help;
    const auto add = [&](const QString& column, const QString& what, const QString& expected) {
        help += QStringLiteral("  %1 %2: %3\n").arg(column, -18).arg(what, expected);
    };
    add(durationColumn(), ThresholdTableWords::tr("duration of one phase, µs"), expectedDuration());
    add(thresholdColumn(), ThresholdTableWords::tr("threshold at that duration, mA peak"),
        expectedThreshold());
    add(siteColumn(), ThresholdTableWords::tr("may be left away; each site is fitted by itself"),
        expectedSite());
    return help;
}

Result<std::vector<ThresholdSeries>> thresholdSeriesFrom(const CsvTable& table, const QString& name)
{
    for (const QString& column : {durationColumn(), thresholdColumn()}) {
        if (!table.columns.contains(column)) {
            return badFormat(name, ThresholdTableWords::tr("the column %1 is missing").arg(column));
        }
    }
    if (table.rows.empty()) {
        return badFormat(name, ThresholdTableWords::tr("no rows below the headings; each "
                                                       "threshold needs a row"));
    }
    const bool hasSites = table.columns.contains(siteColumn());
    std::vector<ThresholdSeries> series;
    for (const CsvRow& row : table.rows) {
        const QString site = cellOf(table, row, siteColumn()).simplified();
        if (hasSites && site.isEmpty()) {
            return badCell(name, row, siteColumn(), site, expectedSite());
        }
        const Result<ThresholdPoint> point = pointFrom(table, row, name);
        if (!point) {
            return point.error();
        }
        pointsOf(series, site).push_back(*point);
    }
    return series;
}

} // namespace quadrille::app
