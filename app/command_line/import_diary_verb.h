// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/command_line.h"

namespace quadrille::app
{

/// `quadrille import-diary --store FILE --patient REF DIARY`: takes over a diary that comes as a
/// file.
int importDiaryVerb(const QStringList& arguments, const CommandContext& context);

} // namespace quadrille::app
