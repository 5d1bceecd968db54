// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/command_line.h"

namespace quadrille::app
{

/// `quadrille figures CASES.csv`: writes the rows of a table with their timing, dose and fatigue to
/// `context.out`. One sentence to `context.err` and nothing to `context.out` where a cell cannot be
/// used.
int figuresVerb(const QStringList& arguments, const CommandContext& context);

} // namespace quadrille::app
