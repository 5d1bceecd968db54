// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <QTextStream>

namespace quadrille::app
{

/// `quadrille figures CASES.csv`: writes the rows of a table with their timing, dose and fatigue to
/// `out`. One sentence to `err` and nothing to `out` where a cell cannot be used.
int figuresVerb(const QStringList& arguments, QTextStream& out, QTextStream& err);

} // namespace quadrille::app
