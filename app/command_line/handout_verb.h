// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/command_line.h"

namespace quadrille::app
{

/// `quadrille handout --store FILE --patient REF [--course N] [--paper a4|letter] [--large-print]
/// --out FILE.pdf`: writes the handout of the plan issued last. The store is only read. Needs a
/// QGuiApplication, no display. `arguments` are those behind the verb. Exit 0; 1 with one sentence
/// on `context.err` for bad input; 2 for a command line that can't be understood.
int handoutVerb(const QStringList& arguments, const CommandContext& context);

} // namespace quadrille::app
