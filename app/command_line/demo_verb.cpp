// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/demo_verb.h"

#include "app/command_line/command_line.h"
#include "app/command_line/verb_options.h"
#include "app/demo/demo_practice.h"
#include "app/demo/large_practice.h"
#include "app/demo/sample_diary.h"

#include <QCommandLineParser>
#include <QElapsedTimer>

namespace quadrille::app
{

namespace
{

struct DemoWords {
    Q_DECLARE_TR_FUNCTIONS(DemoWords)
};

constexpr int mostPatients = 200'000;

int writeLarge(const QString& file, const QString& number, const CommandContext& context)
{
    bool isNumber = false;
    const int patients = number.toInt(&isNumber);
    if (!isNumber || patients < 1 || patients > mostPatients) {
        return misuse(DemoWords::tr("--patients takes a number from 1 to %1.").arg(mostPatients),
                      context);
    }
    QElapsedTimer time;
    time.start();
    const auto written = writeLargePractice(file, context.clock.today(), patients, [&](int done) {
        constexpr int often = 10'000;
        if (done % often == 0) {
            context.err << DemoWords::tr("%1 patients written").arg(done) << Qt::endl;
        }
    });
    if (!written) {
        return refuse(written.error(), context);
    }
    context.out << DemoWords::tr("%1 patients and %2 diary entries written to %3 in %4 s.")
                       .arg(QString::number(patients), QString::number(patients * entriesOfEach),
                            file,
                            QString::number(static_cast<double>(time.elapsed()) / 1000.0, 'f', 1))
                << '\n';
    return exit_code::done;
}

int writeSample(const QString& store, const QString& file, const CommandContext& context)
{
    const auto written = writeSampleDiary(store, file, context.clock.today());
    if (!written) {
        return refuse(written.error(), context);
    }
    context.out << DemoWords::tr("Diary of patient %1, course %2, written to %3: %4 rows.")
                       .arg(written->patient, QString::number(written->course), file,
                            QString::number(written->rows))
                << '\n';
    return exit_code::done;
}

} // namespace

int demoVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(
        DemoWords::tr("Writes a practice in an invented town with made-up patients. The same "
                      "--today gives the same "
                      "practice."));
    const QCommandLineOption many(
        QStringLiteral("patients"),
        DemoWords::tr("Instead, a large practice for measurements: so many patients with %1 diary "
                      "entries each, up to %2.")
            .arg(entriesOfEach)
            .arg(mostPatients),
        QStringLiteral("N"));
    const QCommandLineOption sample(
        QStringLiteral("sample-diary"),
        DemoWords::tr("Also write a diary of one of the patients, to try import-diary with."),
        QStringLiteral("CSV"));
    parser.addOption(many);
    parser.addOption(sample);
    parser.addPositionalArgument(QStringLiteral("FILE"),
                                 DemoWords::tr("Where to write it; must not exist yet."));
    if (const auto end = endsAtOptions(parser, QStringLiteral("demo"), arguments, {}, 1, context)) {
        return *end;
    }
    const QStringList files = parser.positionalArguments();
    if (files.size() != 1) {
        return misuse(DemoWords::tr("Give one file: quadrille demo FILE."), context);
    }
    if (parser.isSet(many)) {
        return writeLarge(files.first(), parser.value(many), context);
    }
    if (const auto written = writeDemoPractice(files.first(), context.clock.today()); !written) {
        return refuse(written.error(), context);
    }
    context.out << DemoWords::tr("Demo practice written to %1.").arg(files.first()) << '\n';
    return parser.isSet(sample) ? writeSample(files.first(), parser.value(sample), context)
                                : exit_code::done;
}

} // namespace quadrille::app
