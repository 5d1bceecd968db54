// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/command_line.h"

namespace quadrille::app
{

/// `quadrille fit-threshold [--json] FILE.csv`: writes rheobase and chronaxie of measured
/// thresholds to `context.out`. One sentence to `context.err` and nothing to `context.out` where a
/// cell cannot be used or no law can be fitted. Exit 0; 1 for bad input; 2 for a command line that
/// can't be understood.
int fitThresholdVerb(const QStringList& arguments, const CommandContext& context);

} // namespace quadrille::app
