// SPDX-License-Identifier: GPL-3.0-or-later
// What a row of `quadrille figures` must hold: the settings of one site, its pad and its week.
#pragma once

#include "app/command_line/csv_table.h"

#include "core/result.h"
#include "core/settings.h"

#include <QString>
#include <QStringList>

#include <cstdint>

namespace quadrille::app
{

/// One case, as its row says; symmetric biphasic pulses that can run.
struct FiguresCase {
    Settings settings; ///< with the amplitude as the last tolerated one
    RampHabit habit = RampHabit::includedInOnTime;
    PadArea area; ///< of the smaller pad
    std::int64_t sessionsPerWeek = 0;
    bool phaseDurationRecruits = false; ///< whether phase duration enters the force model
};

/// Names of the columns that are read, in the order of --help.
QStringList inputColumns();
/// One line a column: its name, what it is, what may stand in it.
QString inputColumnsHelp();
/// Reads one row of a table that has all inputColumns(). Error `badFormat`: the first cell that
/// cannot be used, in one sentence, also where cells contradict each other; it names the row's
/// number unless that is 0, as for a case that stands alone. `name` is what errors call the table.
Result<FiguresCase> figuresCaseFrom(const CsvTable& table, const CsvRow& row, const QString& name);

} // namespace quadrille::app
