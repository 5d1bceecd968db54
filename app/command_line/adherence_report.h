// SPDX-License-Identifier: GPL-3.0-or-later
// The adherence of a course for people and for programs.
#pragma once

#include "core/adherence.h"
#include "core/lived_days.h"

#include <QByteArray>
#include <QString>

namespace quadrille::app
{

struct AdherenceReport {
    QString patient; ///< the reference
    CourseRecords records;
    AdherenceRules rules;
    DateInterval interval;
    CourseAsLived lived;
    Adherence adherence;
};

/// One line each for the days asked for, lately, since the last follow-up, blocks and weeks; "–"
/// where a figure does not exist.
QString adherenceTable(const AdherenceReport& report);

/// Everything, day by day too; null where a figure does not exist. UTF-8.
QByteArray adherenceJson(const AdherenceReport& report);
/// The names in it, with what they mean, for --help.
QString adherenceJsonHelp();

} // namespace quadrille::app
