// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/command_line.h"

namespace quadrille::app
{

/// `quadrille adherence --store FILE --patient REF [--course N] [--from D] [--to D] [--as-of D]
/// [--json]`: how much was done of what was prescribed. The store is only read. `arguments` are
/// those behind the verb. Exit 0; 1 with one sentence on `context.err` for bad input; 2 for a
/// command line that can't be understood.
int adherenceVerb(const QStringList& arguments, const CommandContext& context);

} // namespace quadrille::app
