// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/demo_verb.h"

#include "app/command_line/command_line.h"
#include "app/demo/demo_practice.h"
#include "app/words/error_text.h"

#include <QCommandLineParser>

namespace quadrille::app
{

namespace
{

struct DemoWords {
    Q_DECLARE_TR_FUNCTIONS(DemoWords)
};

} // namespace

int demoVerb(const QStringList& arguments, const Clock& clock, QTextStream& out, QTextStream& err)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(
        DemoWords::tr("Writes a practice in an invented town with made-up patients. The same "
                      "--today gives the same "
                      "practice."));
    const QCommandLineOption help = parser.addHelpOption();
    parser.addPositionalArgument(QStringLiteral("FILE"),
                                 DemoWords::tr("Where to write it; must not exist yet."));
    if (!parser.parse(QStringList{QStringLiteral("quadrille demo")} + arguments)) {
        err << parser.errorText() << '\n';
        return exit_code::usage;
    }
    if (parser.isSet(help)) {
        out << parser.helpText();
        return exit_code::done;
    }
    const QStringList files = parser.positionalArguments();
    if (files.size() != 1) {
        err << DemoWords::tr("Give one file: quadrille demo FILE.") << '\n';
        return exit_code::usage;
    }
    if (const auto written = writeDemoPractice(files.first(), clock.today()); !written) {
        err << errorText(written.error(), QuantityText(QLocale::c())) << '\n';
        return exit_code::badInput;
    }
    out << DemoWords::tr("Demo practice written to %1.").arg(files.first()) << '\n';
    return exit_code::done;
}

} // namespace quadrille::app
