// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/compare_verb.h"

#include "app/command_line/command_line.h"
#include "app/command_line/comparison_text.h"
#include "app/command_line/settings_json.h"
#include "app/command_line/verb_options.h"

#include <QCommandLineParser>

namespace quadrille::app
{

namespace
{

struct CompareWords {
    Q_DECLARE_TR_FUNCTIONS(CompareWords)
};

constexpr qsizetype mostCases = 100; // a table of more columns is read by nobody

QString description()
{
    return CompareWords::tr(
               "Compares settings: every figure of each, and the difference to the first.\n"
               "Each file holds one JSON object in UTF-8, numbers without quotes:\n%1"
               "Example: {\"name\": \"now\", \"frequency_hz\": 50, \"phase_duration_us\": 300, "
               "\"on_s\": 4, \"off_s\": 12, \"session_s\": 1200, \"ramps_included\": 1}\n"
               "Written are, with the names of these columns in JSON, timing, dose where amplitude "
               "and pad area are given, the week where sessions a week are given, and fatigue "
               "ratios. These come from a model with group values and are compared only between "
               "settings that differ in off time or session length.")
        .arg(settingsJsonHelp());
}

int compare(const QStringList& files, bool asJson, const CommandContext& context)
{
    std::vector<SettingsCase> cases;
    FatigueOptions options;
    for (const QString& file : files) {
        const Result<GivenSettings> given = settingsFromJsonFile(file);
        if (!given) {
            return refuse(given.error(), context);
        }
        if (!cases.empty() && given->phaseDurationRecruits != options.phaseDurationRecruits) {
            context.err << CompareWords::tr(
                               "%1: recruitment_model differs from that of %2. Give all files "
                               "the same.")
                               .arg(file, files.first())
                        << '\n';
            return exit_code::badInput;
        }
        options.phaseDurationRecruits = given->phaseDurationRecruits;
        cases.push_back(given->settings);
    }
    FatigueMemory memory;
    const auto compared = compareSettings(cases, memory, options);
    if (!compared) {
        return refuse(compared.error(), context);
    }
    const QuantityText text(QLocale::c());
    return give(asJson ? QString::fromUtf8(comparisonJson(*compared, text))
                       : comparisonTable(*compared, text),
                context);
}

} // namespace

int compareVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(description());
    const QCommandLineOption json(QStringLiteral("json"),
                                  CompareWords::tr("Write JSON instead of a table."));
    parser.addOption(json);
    parser.addPositionalArgument(QStringLiteral("FILE.json"),
                                 CompareWords::tr("The settings to compare; the first is what "
                                                  "the others are held against."),
                                 QStringLiteral("A.json B.json …"));
    if (const auto end =
            endsAtOptions(parser, QStringLiteral("compare"), arguments, {}, mostCases, context)) {
        return *end;
    }
    const QStringList files = parser.positionalArguments();
    if (files.size() < 2) {
        return misuse(CompareWords::tr("Give at least two files: quadrille compare A.json B.json."),
                      context);
    }
    return compare(files, parser.isSet(json), context);
}

} // namespace quadrille::app
