// SPDX-License-Identifier: GPL-3.0-or-later
// Window or command line; nothing else.
#include "app/command_line/command_line.h"
#include "app/window/main_window.h"
#include "app/window/program.h"
#include "app/window/prompts.h"
#include "app/window/system_clock.h"
#include "app/words/damage_text.h"
#include "app/words/translations.h"

#include <QApplication>
#include <QFile>
#include <QSettings>

#include <memory>

namespace
{

using namespace quadrille::app;

void nameProgram()
{
    QCoreApplication::setApplicationName(QStringLiteral("quadrille"));
    QCoreApplication::setOrganizationName(QStringLiteral("quadrille"));
    QCoreApplication::setApplicationVersion(QStringLiteral(QUADRILLE_VERSION));
}

int runVerb(int argc, char** argv, const Verb& verb, const CommandLine& line, QTextStream& out,
            QTextStream& err)
{
    std::unique_ptr<QCoreApplication> application;
    if (verb.draws) {
        qputenv("QT_QPA_PLATFORM", "offscreen"); // fonts without a display
        application = std::make_unique<QGuiApplication>(argc, argv);
    } else {
        application = std::make_unique<QCoreApplication>(argc, argv);
    }
    nameProgram();
    installTranslations(*application);
    const SystemClock clock(line.today);
    return verb.run(line.arguments.mid(1), CommandContext{clock, out, err});
}

bool hasDisplay()
{
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
           qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

int runWindow(int argc, char** argv, const CommandLine& line, QTextStream& err)
{
    if (!hasDisplay()) {
        err << "There is no display for a window. Use the commands instead; quadrille --help lists "
               "them.\n";
        return exit_code::badInput;
    }
    QApplication application(argc, argv);
    nameProgram();
    installTranslations(application);
    const SystemClock clock(line.today);
    QSettings settings;
    DesktopPrompts prompts;
    Program program(application, clock, QLocale(), settings, prompts);
    const bool named = !line.arguments.isEmpty();
    const QString file = named ? line.arguments.first() : Program::defaultStore();
    using quadrille::db::Opening;
    // A name typed wrong must not make an empty practice; the person's own practice is made at
    // first start.
    const auto opened = program.open(file, named ? Opening::existing : Opening::createIfMissing);
    if (!opened) {
        const QString sentence = program.whyNotOpened(opened.error(), file);
        err << sentence << '\n';
        prompts.tell(nullptr, sentence);
        return exit_code::badInput;
    }
    program.window()->askForPractice();
    return QApplication::exec();
}

} // namespace

int main(int argc, char** argv)
{
    QStringList arguments;
    for (int i = 1; i < argc; ++i) {
        arguments.append(QString::fromLocal8Bit(argv[i]));
    }
    QTextStream out(stdout);
    QTextStream err(stderr);
    const CommandLine line = readCommandLine(arguments);
    if (!line.problem.isEmpty()) {
        err << line.problem << '\n';
        return exit_code::usage;
    }
    const QString first = line.arguments.value(0);
    if (first == QStringLiteral("--help") || first == QStringLiteral("-h")) {
        out << verbList();
        return exit_code::done;
    }
    if (first == QStringLiteral("--version")) {
        out << "quadrille " << QUADRILLE_VERSION << '\n';
        return exit_code::done;
    }
    if (const Verb* verb = verbNamed(first)) {
        return runVerb(argc, argv, *verb, line, out, err);
    }
    const bool isFile = QFile::exists(first) || first.contains(QLatin1Char('/')) ||
                        first.contains(QLatin1Char('.'));
    if (line.arguments.size() > 1 || first.startsWith(QLatin1Char('-')) ||
        (!first.isEmpty() && !isFile)) {
        err << "“" << first
            << "” is no command and no file. quadrille --help lists the commands.\n";
        return exit_code::usage;
    }
    return runWindow(argc, argv, line, err);
}
