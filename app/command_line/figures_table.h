// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/csv_table.h"

#include "core/result.h"

#include <QString>
#include <QStringList>

namespace quadrille::app
{

/// Names of the columns that are computed, in the order in which they are written.
QStringList computedColumns();

/// Those among them that come from the force–fatigue model; they stand last, and are empty where
/// the model has no answer.
QStringList modelColumns();

/// The table with its computed columns behind its own; computed columns that it had already are
/// left out. Error `badFormat`: a column that is missing, or the first cell that cannot be used.
/// `name` is what errors call the table.
Result<CsvTable> withFigures(const CsvTable& table, const QString& name);

} // namespace quadrille::app
