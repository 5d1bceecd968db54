// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"

#include <QString>
#include <QStringList>
#include <QTextStream>

#include <optional>
#include <vector>

namespace quadrille::app
{

/// What a command ends with.
namespace exit_code
{
inline constexpr int done = 0;
inline constexpr int badInput = 1;
inline constexpr int usage = 2;
} // namespace exit_code

/// What every command is handed. Sentences about what is wrong go to `err`.
struct CommandContext {
    const Clock& clock;
    QTextStream& out;
    QTextStream& err;
};

/// One command of the program.
struct Verb {
    QString name;
    QString line;       ///< one line for the list of commands
    bool draws = false; ///< needs fonts, so a QGuiApplication, but never a window
    int (*run)(const QStringList& arguments, const CommandContext& context);
};

const std::vector<Verb>& verbs();
const Verb* verbNamed(const QString& name);
/// The list of commands, for --help.
QString verbList();

/// What stands on the command line before any command is looked at.
struct CommandLine {
    std::optional<Date> today = std::nullopt;
    QStringList arguments; ///< without the program's name and --today
    QString problem;       ///< one sentence; empty when all is well
};
/// Takes --today DATE (or --today=DATE) out, wherever it stands.
CommandLine readCommandLine(const QStringList& arguments);

} // namespace quadrille::app
