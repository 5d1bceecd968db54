// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"

#include <QStringList>
#include <QTextStream>

namespace quadrille::app
{

/// `quadrille demo FILE`: writes the demo practice. Never over a file that is there.
int demoVerb(const QStringList& arguments, const Clock& clock, QTextStream& out, QTextStream& err);

} // namespace quadrille::app
