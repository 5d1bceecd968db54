// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"

#include <QStringList>
#include <QTextStream>

namespace quadrille::app
{

/// `quadrille handout --store FILE --patient REF [--course N] [--paper a4|letter] [--large-print]
/// --out FILE.pdf`: writes the handout of the plan issued last. The store is only read. Needs a
/// QGuiApplication, no display. `arguments` are those behind the verb. Exit 0; 1 with one sentence
/// on `err` for bad input; 2 for a command line that can't be understood.
int handoutVerb(const QStringList& arguments, const Clock& clock, QTextStream& out,
                QTextStream& err);

} // namespace quadrille::app
