// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/command_line.h"

#include "core/result.h"

#include <QCommandLineParser>

#include <optional>
#include <string>

namespace quadrille::app
{

/// Reads a verb's arguments into `parser`, whose options are added already. An exit code when the
/// verb ends here: help was asked for, or the line can't be understood or lacks one of `needed`.
std::optional<int> endsAtOptions(QCommandLineParser& parser, const QString& verb,
                                 const QStringList& arguments, const QStringList& needed,
                                 const CommandContext& context);

/// --store FILE, --out FILE and --passphrase-file FILE, as several verbs have them.
QCommandLineOption storeFileOption();
QCommandLineOption outFileOption(const QString& description);
QCommandLineOption passphraseFileOption();

/// The first line of the file that --passphrase-file names, "-" for standard input. Error notFilled
/// or cannotRead.
Result<std::string> passphraseFrom(const QString& file);

/// The sentence for an error, on `err`; gives the exit code.
int refuse(const Error& error, const CommandContext& context);

} // namespace quadrille::app
