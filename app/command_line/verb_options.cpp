// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/verb_options.h"

#include "app/words/error_text.h"

#include <QCoreApplication>
#include <QFile>

#include <cstdio>

namespace quadrille::app
{

namespace
{

struct OptionWords {
    Q_DECLARE_TR_FUNCTIONS(OptionWords)
};

} // namespace

std::optional<int> endsAtOptions(QCommandLineParser& parser, const QString& verb,
                                 const QStringList& arguments, const QStringList& needed,
                                 const CommandContext& context)
{
    const QCommandLineOption help = parser.addHelpOption();
    if (!parser.parse(QStringList{QStringLiteral("quadrille ") + verb} + arguments)) {
        context.err << parser.errorText() << '\n';
        return exit_code::usage;
    }
    if (parser.isSet(help)) {
        context.out << parser.helpText();
        return exit_code::done;
    }
    for (const QString& option : needed) {
        if (parser.value(option).isEmpty()) {
            context.err << OptionWords::tr("--%1 is needed. quadrille %2 --help lists the options.")
                               .arg(option, verb)
                        << '\n';
            return exit_code::usage;
        }
    }
    return std::nullopt;
}

QCommandLineOption storeFileOption()
{
    return {QStringLiteral("store"), OptionWords::tr("The practice file."), QStringLiteral("FILE")};
}

QCommandLineOption outFileOption(const QString& description)
{
    return {QStringLiteral("out"), description, QStringLiteral("FILE")};
}

QCommandLineOption passphraseFileOption()
{
    return {QStringLiteral("passphrase-file"),
            OptionWords::tr("A file whose first line is the passphrase; - reads it from standard "
                            "input."),
            QStringLiteral("FILE")};
}

Result<std::string> passphraseFrom(const QString& name)
{
    QFile file(name);
    const bool opened = name == QStringLiteral("-") ? file.open(stdin, QIODevice::ReadOnly)
                                                    : file.open(QIODevice::ReadOnly);
    if (!opened) {
        return Error{.code = ErrorCode::cannotRead,
                     .subject = name.toStdString(),
                     .detail = file.errorString().toStdString()};
    }
    QByteArray line = file.readLine();
    while (line.endsWith('\n') || line.endsWith('\r')) {
        line.chop(1);
    }
    if (line.isEmpty()) {
        return Error{.code = ErrorCode::badFormat,
                     .subject = name.toStdString(),
                     .detail = "its first line is empty; put the passphrase there"};
    }
    return line.toStdString();
}

int refuse(const Error& error, const CommandContext& context)
{
    context.err << errorText(error, QuantityText(QLocale::c())) << '\n';
    return exit_code::badInput;
}

} // namespace quadrille::app
