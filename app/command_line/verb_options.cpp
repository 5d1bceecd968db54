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
                                 qsizetype mostFiles, const CommandContext& context)
{
    const QCommandLineOption help = parser.addHelpOption();
    if (!parser.parse(QStringList{QStringLiteral("quadrille ") + verb} + arguments)) {
        return misuse(parser.errorText(), context);
    }
    if (parser.isSet(help)) {
        context.out << parser.helpText();
        return exit_code::done;
    }
    const QStringList files = parser.positionalArguments();
    if (files.size() > mostFiles) {
        return misuse(OptionWords::tr("“%1” is not understood. quadrille %2 --help tells more.")
                          .arg(files[mostFiles], verb),
                      context);
    }
    for (const QString& option : needed) {
        if (parser.value(option).isEmpty()) {
            return misuse(OptionWords::tr("--%1 is needed. quadrille %2 --help lists the options.")
                              .arg(option, verb),
                          context);
        }
    }
    return std::nullopt;
}

int misuse(const QString& sentence, const CommandContext& context)
{
    context.err << sentence << '\n';
    return exit_code::usage;
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
        return Error{
            .code = ErrorCode::badFormat,
            .subject = name.toStdString(),
            .detail =
                OptionWords::tr("its first line is empty; put the passphrase there").toStdString()};
    }
    return line.toStdString();
}

int give(const QString& text, const CommandContext& context)
{
    context.out << text;
    context.out.flush();
    if (context.out.status() != QTextStream::Ok) {
        context.err << OptionWords::tr("The result can’t be written; check the disk.") << '\n';
        return exit_code::badInput;
    }
    return exit_code::done;
}

int refuse(const Error& error, const CommandContext& context)
{
    context.err << errorText(error, QuantityText(QLocale::c())) << '\n';
    return exit_code::badInput;
}

} // namespace quadrille::app
