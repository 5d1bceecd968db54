// SPDX-License-Identifier: GPL-3.0-or-later
// The verbs that look after a practice file. Exit 0; 1 with one sentence on `err` for what is
// wrong; 2 for a command line that can't be understood.
#pragma once

#include "app/command_line/command_line.h"

namespace quadrille::app
{

/// `quadrille verify --store F`: looks through the whole file; prints what is wrong and where, exit
/// 1; or that nothing is, with the end of the change record.
int verifyVerb(const QStringList& arguments, const CommandContext& context);

/// `quadrille backup --store F --out B [--passphrase-file P]`
int backupVerb(const QStringList& arguments, const CommandContext& context);

/// `quadrille restore B --store F [--force] [--passphrase-file P]`
int restoreVerb(const QStringList& arguments, const CommandContext& context);

/// `quadrille anonymise --store F --out G`
int anonymiseVerb(const QStringList& arguments, const CommandContext& context);

/// `quadrille erase --store F --patient REF --confirm REF --ground GROUND --by NAME [--copies
/// FOLDER] …`
int eraseVerb(const QStringList& arguments, const CommandContext& context);

} // namespace quadrille::app
