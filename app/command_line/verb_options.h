// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/command_line.h"

#include "db/store.h"

#include "core/result.h"

#include <QCommandLineParser>

#include <optional>
#include <string>

namespace quadrille::app
{

/// Reads a verb's arguments into `parser`, whose options are added already. An exit code when the
/// verb ends here: help was asked for, or the line can't be understood, lacks one of `needed`, or
/// has more words without an option than `mostFiles`.
std::optional<int> endsAtOptions(QCommandLineParser& parser, const QString& verb,
                                 const QStringList& arguments, const QStringList& needed,
                                 qsizetype mostFiles, const CommandContext& context);

/// A line that can't be understood: `sentence` on `context.err`; gives the exit code.
int misuse(const QString& sentence, const CommandContext& context);

/// --store FILE, --out FILE and --passphrase-file FILE, as several verbs have them.
QCommandLineOption storeFileOption();
QCommandLineOption outFileOption(const QString& description);
QCommandLineOption passphraseFileOption();

/// The first line of the file that --passphrase-file names, "-" for standard input. Error badFormat
/// or cannotRead.
Result<std::string> passphraseFrom(const QString& file);

/// Who writes where no practitioner is named.
db::Author commandLineAuthor();

/// Writes what a verb gives, whole, to `context.out`; the exit code, with a sentence on
/// `context.err` where it can't be written.
int give(const QString& text, const CommandContext& context);

/// The sentence for an error, on `context.err`; gives the exit code.
int refuse(const Error& error, const CommandContext& context);

} // namespace quadrille::app
