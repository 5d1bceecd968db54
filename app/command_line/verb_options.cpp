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

QString withoutFullStop(QString sentence)
{
    if (sentence.endsWith(QLatin1Char('.'))) {
        sentence.chop(1);
    }
    return sentence;
}

/// Why the options can't be read.
QString whyNotRead(const QCommandLineParser& parser, const QString& verb)
{
    const QStringList unknown = parser.unknownOptionNames();
    if (unknown.isEmpty()) { // one without its value, or with a value it does not take
        return OptionWords::tr("%1: quadrille %2 --help lists the options.")
            .arg(withoutFullStop(parser.errorText()), verb);
    }
    const QString dashes = unknown.front().size() == 1 ? QStringLiteral("-") : QStringLiteral("--");
    return OptionWords::tr("%1 is no option of this command: quadrille %2 --help lists those "
                           "there are.")
        .arg(dashes + unknown.front(), verb);
}

/// The parser calls the program by its path on this machine and knows no verb.
QString helpOf(const QCommandLineParser& parser, const QString& verb)
{
    const QString program = QCoreApplication::arguments().constFirst();
    QString text = parser.helpText();
    const auto place = text.left(text.indexOf(QLatin1Char('\n'))).indexOf(program);
    return place < 0 ? text
                     : text.replace(place, program.size(), QStringLiteral("quadrille ") + verb);
}

} // namespace

std::optional<int> endsAtOptions(QCommandLineParser& parser, const QString& verb,
                                 const QStringList& arguments, const QStringList& needed,
                                 qsizetype mostFiles, const CommandContext& context)
{
    const QCommandLineOption help = parser.addHelpOption();
    if (!parser.parse(QStringList{QStringLiteral("quadrille ") + verb} + arguments)) {
        return misuse(whyNotRead(parser, verb), context);
    }
    if (parser.isSet(help)) {
        context.out << helpOf(parser, verb);
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

db::Author commandLineAuthor()
{
    return {.practitioner = std::nullopt, .name = "Command line"};
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
