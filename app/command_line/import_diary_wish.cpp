// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/import_diary_wish.h"

#include "app/command_line/course_choice.h"
#include "app/command_line/import_diary_report.h"
#include "app/command_line/verb_options.h"
#include "app/diary_import/diary_json.h"

#include <QCommandLineParser>
#include <QCoreApplication>

#include <algorithm>
#include <string>

namespace quadrille::app
{

namespace
{

struct ImportWishWords {
    Q_DECLARE_TR_FUNCTIONS(ImportWishWords)
};

using Problem = QString;

constexpr QLatin1String mappingOption("mapping");
constexpr QLatin1String rememberOption("remember");
constexpr QLatin1String columnOption("column");
constexpr QLatin1String dateOrderOption("date-order");
constexpr QLatin1String timeFormOption("time-form");
constexpr QLatin1String takeOption("take");
constexpr QLatin1String throughOption("through");
constexpr QLatin1String byOption("by");
constexpr QLatin1String dryRunOption("dry-run");
constexpr QLatin1String jsonOption("json");

/// A word of an option as a choice; the sentence where it is none.
template <class Choice>
std::optional<Problem> readChoice(const QCommandLineParser& parser, QLatin1String option,
                                  const std::vector<std::pair<QString, Choice>>& words,
                                  std::optional<Choice>& choice)
{
    if (!parser.isSet(option)) {
        return std::nullopt;
    }
    QStringList known;
    for (const auto& [word, meaning] : words) {
        known.append(word);
        if (parser.value(option) == word) {
            choice = meaning;
            return std::nullopt;
        }
    }
    return ImportWishWords::tr("--%1 takes one of: %2.")
        .arg(option, known.join(QStringLiteral(", ")));
}

std::optional<Problem> readColumns(const QCommandLineParser& parser, ImportWish& wish)
{
    const QStringList values = parser.values(columnOption);
    for (const QString& value : values) {
        const auto sign = value.indexOf(QLatin1Char('='));
        const auto meaning = columnNamed(value.left(sign).toStdString());
        if (sign < 0 || !meaning) {
            return ImportWishWords::tr("--column: “%1” is not understood. Give NAME=HEADING with "
                                       "one of these names: %2.")
                .arg(value, diaryJsonHelp());
        }
        const std::string heading = value.mid(sign + 1).toStdString();
        const bool isTwice = std::ranges::any_of(
            wish.columns, [&](const auto& column) { return column.first == heading; });
        if (isTwice) {
            return ImportWishWords::tr("--column: “%1” is given twice. A column holds one thing.")
                .arg(value.mid(sign + 1));
        }
        wish.columns.emplace_back(heading, *meaning);
    }
    return std::nullopt;
}

std::optional<Problem> readThrough(const QCommandLineParser& parser, ImportWish& wish)
{
    if (!parser.isSet(throughOption)) {
        return std::nullopt;
    }
    wish.through = dateFromIso(parser.value(throughOption).toStdString());
    return wish.through
               ? std::nullopt
               : std::optional(ImportWishWords::tr("--through: “%1” is no date. Give it as "
                                                   "YYYY-MM-DD, for example 2026-03-12.")
                                   .arg(parser.value(throughOption)));
}

std::optional<Problem> readChoices(const QCommandLineParser& parser, ImportWish& wish)
{
    std::optional<Problem> problem = readChoice(parser, dateOrderOption,
                                                {{QStringLiteral("dmy"), DateOrder::dayMonthYear},
                                                 {QStringLiteral("mdy"), DateOrder::monthDayYear},
                                                 {QStringLiteral("ymd"), DateOrder::yearMonthDay}},
                                                wish.rules.dateOrder);
    problem = problem ? problem
                      : readChoice(parser, timeFormOption,
                                   {{QStringLiteral("h:mm"), DurationForm::hoursMinutes},
                                    {QStringLiteral("mm:ss"), DurationForm::minutesSeconds}},
                                   wish.rules.durationForm);
    return problem ? problem
                   : readChoice(parser, takeOption,
                                {{QStringLiteral("file"), true}, {QStringLiteral("ours"), false}},
                                wish.takeFile);
}

} // namespace

void addImportOptions(QCommandLineParser& parser)
{
    parser.setApplicationDescription(
        ImportWishWords::tr(
            "Takes over a diary that comes as a file: all of it, or nothing. What is on file "
            "stays unless --take says otherwise; rows outside the course, after today, twice in "
            "the file or not readable are left out and said.\n"
            "CSV: UTF-8 or Windows-1252, cells between commas, semicolons or tabs, columns by "
            "their headings. JSON: {\"format\": \"quadrille-diary\", \"version\": 1, "
            "\"entries\": […]}, days as YYYY-MM-DD.\nNames: %1.\n%2")
            .arg(diaryJsonHelp(), importReportHelp()));
    const QString name = QStringLiteral("NAME");
    parser.addOptions(
        {storeFileOption(),
         patientOption(),
         courseOption(),
         {mappingOption, ImportWishWords::tr("Columns as they are remembered under this name."),
          name},
         {rememberOption, ImportWishWords::tr("Remember the columns under this name."), name},
         {columnOption,
          ImportWishWords::tr("What a column holds, for example minutes=Dauer; may be given "
                              "several times."),
          QStringLiteral("NAME=HEADING")},
         {dateOrderOption, ImportWishWords::tr("dmy, mdy or ymd, where the file does not show it."),
          QStringLiteral("ORDER")},
         {timeFormOption, ImportWishWords::tr("h:mm or mm:ss, where the file does not show it."),
          QStringLiteral("FORM")},
         {takeOption,
          ImportWishWords::tr("What stands where both differ: file or ours. Without it nothing "
                              "is taken over while something differs."),
          QStringLiteral("WHAT")},
         {throughOption, ImportWishWords::tr("The diary is complete through this day."),
          QStringLiteral("YYYY-MM-DD")},
         {byOption, ImportWishWords::tr("The practitioner who takes it over."), name},
         {dryRunOption, ImportWishWords::tr("Only say what would be done.")},
         {jsonOption, ImportWishWords::tr("Write the report as JSON.")}});
    parser.addPositionalArgument(QStringLiteral("DIARY"), ImportWishWords::tr("The file."));
}

std::variant<ImportWish, QString> importWishOf(const QCommandLineParser& parser)
{
    ImportWish wish;
    const QStringList files = parser.positionalArguments();
    if (files.size() != 1) {
        return ImportWishWords::tr("Give one diary: quadrille import-diary DIARY --store FILE "
                                   "--patient REF.");
    }
    wish.file = files.first();
    wish.store = parser.value(storeFileOption());
    wish.patient = parser.value(patientOption());
    wish.mapping = parser.value(mappingOption);
    wish.remember = parser.value(rememberOption).simplified();
    wish.by = parser.value(byOption);
    wish.isDryRun = parser.isSet(dryRunOption);
    wish.asJson = parser.isSet(jsonOption);
    const auto course = courseNumberIn(parser);
    if (const auto* problem = std::get_if<Problem>(&course)) {
        return *problem;
    }
    wish.course = std::get<std::optional<int>>(course);
    std::optional<Problem> problem = readColumns(parser, wish);
    problem = problem ? problem : readThrough(parser, wish);
    problem = problem ? problem : readChoices(parser, wish);
    if (problem) {
        return *problem;
    }
    return wish;
}

} // namespace quadrille::app
