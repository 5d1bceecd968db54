// SPDX-License-Identifier: GPL-3.0-or-later
// What a row of `quadrille fit-threshold` must hold: one threshold, and the site it belongs to
// where the table has several.
#pragma once

#include "app/command_line/csv_table.h"

#include "core/result.h"
#include "core/strength_duration.h"

#include <QString>

#include <vector>

namespace quadrille::app
{

/// The thresholds of one site, in the order of their rows.
struct ThresholdSeries {
    QString site; ///< empty where the table has no column of that name
    std::vector<ThresholdPoint> points;
};

/// One line a column: its name, what it is, what may stand in it.
QString thresholdColumnsHelp();

/// The series of a table, one for each site, in the order in which the sites first appear. Error
/// `badFormat`: a column that is missing, no rows, or the first cell that cannot be used. `name` is
/// what errors call the table.
Result<std::vector<ThresholdSeries>> thresholdSeriesFrom(const CsvTable& table,
                                                         const QString& name);

} // namespace quadrille::app
