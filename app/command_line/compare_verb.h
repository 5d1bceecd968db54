// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <QTextStream>

namespace quadrille::app
{

/// `quadrille compare A.json B.json … [--json]`: writes the figures of several settings side by
/// side and their differences to the first. One sentence to `err` and nothing to `out` where a file
/// cannot be used.
int compareVerb(const QStringList& arguments, QTextStream& out, QTextStream& err);

} // namespace quadrille::app
