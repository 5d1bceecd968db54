// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/adherence_verb.h"

#include "app/command_line/adherence_report.h"
#include "app/command_line/command_line.h"
#include "app/command_line/course_choice.h"
#include "app/command_line/verb_options.h"

#include "db/course_records.h"
#include "db/courses.h"
#include "db/people.h"
#include "db/store.h"

#include <QCommandLineParser>

#include <variant>

namespace quadrille::app
{

namespace
{

struct AdherenceVerbWords {
    Q_DECLARE_TR_FUNCTIONS(AdherenceVerbWords)
};

constexpr QLatin1String fromOption("from");
constexpr QLatin1String toOption("to");
constexpr QLatin1String asOfOption("as-of");
constexpr QLatin1String jsonOption("json");

/// What the command line asks for.
struct Wish {
    QString store;
    QString patient;
    std::optional<int> course;
    std::optional<Date> from;
    std::optional<Date> to;
    std::optional<Date> asOf;
    bool asJson = false;
};

/// Why it can't be done, in one sentence.
using Problem = QString;

QString description()
{
    return AdherenceVerbWords::tr(
               "How much was done of what was prescribed, in sessions and in dose; what is not "
               "known yet is never counted as missed.\n"
               "A week of a block with a number of days a week counts what it lacks on its last "
               "day.\n"
               "Names in JSON:\n%1")
        .arg(adherenceJsonHelp());
}

void addOptions(QCommandLineParser& parser)
{
    const QString day = QStringLiteral("YYYY-MM-DD");
    parser.addOptions(
        {storeFileOption(),
         patientOption(),
         courseOption(),
         {fromOption, AdherenceVerbWords::tr("First day to count; else the start of the course."),
          day},
         {toOption, AdherenceVerbWords::tr("Last day to count; else the day of --as-of."), day},
         {asOfOption, AdherenceVerbWords::tr("The day to take for today; else today."), day},
         {jsonOption, AdherenceVerbWords::tr("Write JSON instead of a table.")}});
}

/// A day that is given is read into `day`; the sentence when it is none.
std::optional<Problem> readDay(const QCommandLineParser& parser, QLatin1String option,
                               std::optional<Date>& day)
{
    if (!parser.isSet(option)) {
        return std::nullopt;
    }
    day = dateFromIso(parser.value(option).toStdString());
    if (day) {
        return std::nullopt;
    }
    return AdherenceVerbWords::tr(
               "--%1: “%2” is no date. Give it as YYYY-MM-DD, for example 2026-03-12.")
        .arg(option, parser.value(option));
}

std::variant<Wish, Problem> wishOf(const QCommandLineParser& parser)
{
    Wish wish;
    wish.store = parser.value(storeFileOption());
    wish.patient = parser.value(patientOption());
    wish.asJson = parser.isSet(jsonOption);
    const auto course = courseNumberIn(parser);
    if (const auto* problem = std::get_if<Problem>(&course)) {
        return *problem;
    }
    wish.course = std::get<std::optional<int>>(course);
    for (const auto& [option, day] :
         {std::pair(fromOption, &wish.from), {toOption, &wish.to}, {asOfOption, &wish.asOf}}) {
        if (const auto problem = readDay(parser, option, *day)) {
            return *problem;
        }
    }
    return wish;
}

/// What the store knows, read in one view.
struct Found {
    bool isPatient = false;
    std::variant<Course, Problem> course;
    CourseRecords records;
    AdherenceRules rules;
};

Found read(db::Reading& reading, const Wish& wish, Date asOf)
{
    Found found;
    const auto patient = db::patientByReference(reading, wish.patient.toStdString());
    found.isPatient = patient.has_value();
    if (!patient) {
        return found;
    }
    found.course = chooseCourse(db::coursesOf(reading, *patient->id), wish.patient, wish.course,
                                asOf, QuantityText(QLocale()));
    if (const auto* course = std::get_if<Course>(&found.course)) {
        found.records = db::courseRecords(reading, *course);
        found.rules = db::adherenceRules(reading);
    }
    return found;
}

int report(const Found& found, const Wish& wish, Date asOf, const CommandContext& context)
{
    const CourseRecords& records = found.records;
    if (asOf < records.course.startDate && !wish.to) {
        context.err << AdherenceVerbWords::tr(
                           "Course %1 of patient %2 has not begun on %3: it starts on %4. Give "
                           "--to for what is to come.")
                           .arg(QString::number(records.course.number), wish.patient,
                                QString::fromStdString(isoDate(asOf)),
                                QString::fromStdString(isoDate(records.course.startDate)))
                    << '\n';
        return exit_code::badInput;
    }
    DateInterval interval = wholeCourse(records.course, asOf);
    interval.from = wish.from.value_or(interval.from);
    interval.to = wish.to.value_or(interval.to);
    if (interval.to < interval.from) {
        context.err << AdherenceVerbWords::tr(
                           "The days asked for end (%1) before they begin (%2). Give --from and "
                           "--to the other way round, or another day.")
                           .arg(QString::fromStdString(isoDate(interval.to)),
                                QString::fromStdString(isoDate(interval.from)))
                    << '\n';
        return exit_code::badInput;
    }
    const AdherenceReport report{wish.patient,
                                 records,
                                 found.rules,
                                 interval,
                                 courseAsLived(records, found.rules, asOf),
                                 adherenceOf(records, found.rules, interval, asOf)};
    return give(wish.asJson ? QString::fromUtf8(adherenceJson(report)) : adherenceTable(report),
                context);
}

int reportFrom(const Wish& wish, const CommandContext& context)
{
    const Date asOf = wish.asOf.value_or(context.clock.today());
    const auto store = db::Store::open(wish.store, db::Opening::readOnly, context.clock);
    if (!store) {
        return refuse(store.error(), context);
    }
    const auto found =
        (*store)->read([&](db::Reading& reading) { return read(reading, wish, asOf); });
    if (!found) {
        return refuse(found.error(), context);
    }
    if (!found->isPatient) {
        context.err << noSuchPatient(wish.patient, wish.store) << '\n';
        return exit_code::badInput;
    }
    if (const auto* problem = std::get_if<Problem>(&found->course)) {
        context.err << *problem << '\n';
        return exit_code::badInput;
    }
    return report(*found, wish, asOf, context);
}

} // namespace

int adherenceVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(description());
    addOptions(parser);
    if (const auto end =
            endsAtOptions(parser, QStringLiteral("adherence"), arguments,
                          {QStringLiteral("store"), QStringLiteral("patient")}, 0, context)) {
        return *end;
    }
    const auto wish = wishOf(parser);
    if (const auto* problem = std::get_if<Problem>(&wish)) {
        return misuse(*problem, context);
    }
    return reportFrom(std::get<Wish>(wish), context);
}

} // namespace quadrille::app
