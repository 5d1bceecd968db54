// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/command_line.h"

namespace quadrille::app
{

/// `quadrille compare A.json B.json … [--json]`: writes the figures of several settings side by
/// side and their differences to the first. One sentence to `context.err` and nothing to
/// `context.out` where a file cannot be used.
int compareVerb(const QStringList& arguments, const CommandContext& context);

} // namespace quadrille::app
