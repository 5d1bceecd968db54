// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/command_line.h"

#include "app/command_line/adherence_verb.h"
#include "app/command_line/care_verbs.h"
#include "app/command_line/compare_verb.h"
#include "app/command_line/demo_verb.h"
#include "app/command_line/figures_verb.h"
#include "app/command_line/fit_threshold_verb.h"
#include "app/command_line/handout_verb.h"
#include "app/command_line/import_diary_verb.h"

#include <QCoreApplication>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct CommandWords {
    Q_DECLARE_TR_FUNCTIONS(CommandWords)
};

} // namespace

const std::vector<Verb>& verbs()
{
    static const std::vector<Verb> all{
        {QStringLiteral("demo"),
         CommandWords::tr(
             "demo FILE [--patients N] [--sample-diary CSV]: write the made-up demo practice"),
         false, demoVerb},
        {QStringLiteral("figures"),
         CommandWords::tr("figures CASES.csv: timing, dose and fatigue of settings in a table"),
         false, figuresVerb},
        {QStringLiteral("compare"),
         CommandWords::tr("compare A.json B.json …: the figures of settings side by side"), false,
         compareVerb},
        {QStringLiteral("fit-threshold"),
         CommandWords::tr("fit-threshold FILE.csv: rheobase and chronaxie from thresholds"), false,
         fitThresholdVerb},
        {QStringLiteral("handout"),
         CommandWords::tr(
             "handout --store FILE --patient REF --out FILE.pdf: write a patient’s handout"),
         true, handoutVerb},
        {QStringLiteral("adherence"),
         CommandWords::tr("adherence --store FILE --patient REF: how much was done of what was "
                          "prescribed"),
         false, adherenceVerb},
        {QStringLiteral("import-diary"),
         CommandWords::tr("import-diary --store FILE --patient REF DIARY: take over a diary that "
                          "comes as a file"),
         false, importDiaryVerb},
        {QStringLiteral("verify"),
         CommandWords::tr("verify --store FILE: look through a practice file for faults"), false,
         verifyVerb},
        {QStringLiteral("backup"),
         CommandWords::tr("backup --store FILE --out BACKUP: copy a practice file"), false,
         backupVerb},
        {QStringLiteral("restore"),
         CommandWords::tr("restore BACKUP --store FILE: put a backup in its place"), false,
         restoreVerb},
        {QStringLiteral("anonymise"),
         CommandWords::tr("anonymise --store FILE --out COPY: a copy without names and texts"),
         false, anonymiseVerb},
        {QStringLiteral("erase"),
         CommandWords::tr("erase --store FILE --patient REF …: erase a patient on legal request"),
         false, eraseVerb},
    };
    return all;
}

const Verb* verbNamed(const QString& name)
{
    const auto found = std::ranges::find(verbs(), name, &Verb::name);
    return found != verbs().end() ? &*found : nullptr;
}

QString verbList()
{
    QString list =
        CommandWords::tr("quadrille [--today YYYY-MM-DD] [FILE]: open a practice in the window\n");
    for (const Verb& verb : verbs()) {
        list += QStringLiteral("quadrille %1\n").arg(verb.line);
    }
    return list + CommandWords::tr("quadrille COMMAND --help tells more about one command.\n");
}

CommandLine readCommandLine(const QStringList& arguments)
{
    const QString option = QStringLiteral("--today");
    CommandLine line;
    for (qsizetype i = 0; i < arguments.size(); ++i) {
        const QString& argument = arguments[i];
        if (argument != option && !argument.startsWith(option + QLatin1Char('='))) {
            line.arguments.append(argument);
            continue;
        }
        const QString value =
            argument == option ? arguments.value(++i) : argument.mid(option.size() + 1);
        line.today = dateFromIso(value.toStdString());
        if (!line.today) {
            line.problem =
                CommandWords::tr(
                    "--today: “%1” is no date. Give it as YYYY-MM-DD, for example 2026-03-12.")
                    .arg(value);
        }
    }
    return line;
}

} // namespace quadrille::app
