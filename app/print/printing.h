// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/result.h"

class QPrinter;

namespace quadrille::app
{

class HandoutDocument;

/// Sets paper, name and number of pages before the person is asked; margins are the handout's own.
void prepare(QPrinter& printer, const HandoutDocument& document);

/// Prints the pages the person asked for, all unless a range was given. The paper is the handout's,
/// whatever was chosen for the printer. Error `cannotWrite` when the printer does not take it.
Result<void> printHandout(QPrinter& printer, const HandoutDocument& document);

} // namespace quadrille::app
