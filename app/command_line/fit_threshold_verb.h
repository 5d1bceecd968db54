// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <QTextStream>

namespace quadrille::app
{

/// `quadrille fit-threshold [--json] FILE.csv`: writes rheobase and chronaxie of measured
/// thresholds to `out`. One sentence to `err` and nothing to `out` where a cell cannot be used or
/// no law can be fitted. Exit 0; 1 for bad input; 2 for a command line that can't be understood.
int fitThresholdVerb(const QStringList& arguments, QTextStream& out, QTextStream& err);

} // namespace quadrille::app
