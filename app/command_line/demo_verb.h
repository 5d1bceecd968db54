// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/command_line.h"

namespace quadrille::app
{

/// `quadrille demo FILE`: writes the demo practice. Never over a file that is there.
int demoVerb(const QStringList& arguments, const CommandContext& context);

} // namespace quadrille::app
