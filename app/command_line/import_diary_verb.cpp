// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/import_diary_verb.h"

#include "app/command_line/course_choice.h"
#include "app/command_line/import_diary_report.h"
#include "app/command_line/import_diary_wish.h"
#include "app/command_line/verb_options.h"
#include "app/diary_import/diary_matching.h"
#include "app/diary_import/import_words.h"
#include "app/words/error_text.h"

#include "db/courses.h"
#include "db/diary_taking.h"
#include "db/people.h"

#include <QCoreApplication>

#include <algorithm>
#include <variant>

namespace quadrille::app
{

namespace
{

struct ImportVerbWords {
    Q_DECLARE_TR_FUNCTIONS(ImportVerbWords)
};

/// Why it can't be done, in one sentence.
using Problem = QString;

/// What the store knows, read in one view.
struct Found {
    bool isPatient = false;
    std::variant<Course, Problem> course;
    DiaryOnFile onFile;
    db::RememberedMappings remembered;
    std::vector<Practitioner> practitioners;
};

Found read(db::Reading& reading, const ImportWish& wish, Date today)
{
    Found found;
    const auto patient = db::patientByReference(reading, wish.patient.toStdString());
    found.isPatient = patient.has_value();
    if (!patient) {
        return found;
    }
    found.course = chooseCourse(db::coursesOf(reading, *patient->id), wish.patient, wish.course,
                                today, QuantityText(QLocale()));
    if (const auto* course = std::get_if<Course>(&found.course)) {
        found.onFile = db::diaryOnFile(reading, *course->id, today);
    }
    found.remembered = db::diaryMappings(reading);
    found.practitioners = db::practitioners(reading);
    return found;
}

/// What is in the file and what it does to the store.
class ImportCommand
{
public:
    ImportCommand(const ImportWish& wish, const Found& found)
        : m_wish(wish)
        , m_found(found)
    {
    }

    /// Reads the file as the options and what is remembered say.
    std::optional<Problem> readFile()
    {
        if (!m_wish.mapping.isEmpty()) {
            const auto& mappings = m_found.remembered.mappings;
            const auto known =
                std::ranges::find(mappings, m_wish.mapping.toStdString(), &db::DiaryMapping::name);
            if (known == mappings.end()) {
                return unknownMapping();
            }
            m_mapping = *known;
        }
        const auto bytes = diaryBytes(m_wish.file);
        if (!bytes) {
            return errorOf(bytes.error());
        }
        ReadingWish reading;
        reading.separator = m_mapping ? m_mapping->separator : std::nullopt;
        auto file = readDiary(*bytes, m_wish.file, reading);
        if (!file) {
            return errorOf(file.error());
        }
        m_file = std::move(file).value();
        return std::nullopt;
    }

    std::optional<Problem> matchColumns()
    {
        const bool isNamed = m_mapping.has_value();
        if (!isNamed) {
            m_mapping = mappingFor(m_file.table, m_found.remembered.mappings);
        }
        const auto remembered = m_mapping ? columnsBy(*m_mapping, m_file.table) : std::nullopt;
        if (isNamed && !remembered) {
            return ImportVerbWords::tr("%1 lacks a column that “%2” names. Columns found: %3.")
                .arg(m_wish.file, m_wish.mapping, headings());
        }
        m_columns = remembered
                        ? *remembered
                        : matchedColumns(m_file.table, siteWordsOf(m_found.onFile.records.plans));
        for (const auto& [heading, meaning] : m_wish.columns) {
            const auto place = std::ranges::find(m_file.table.headings(), heading);
            if (place == m_file.table.headings().end()) {
                return ImportVerbWords::tr("--column: %1 has no column “%2”. Columns found: %3.")
                    .arg(m_wish.file, QString::fromStdString(heading), headings());
            }
            std::ranges::replace(m_columns, std::optional(meaning), std::optional<ColumnMeaning>());
            m_columns[static_cast<std::size_t>(place - m_file.table.headings().begin())] = meaning;
        }
        if (const auto missing = missingColumn(m_columns)) {
            return missingColumnSentence(*missing, m_file.table.headings()) + QLatin1Char(' ') +
                   ImportVerbWords::tr("On the command line: --column %1=HEADING.")
                       .arg(QString::fromStdString(nameOf({.column = *missing})));
        }
        return std::nullopt;
    }

    std::optional<Problem> readRows(Date today)
    {
        const FileEvidence evidence = evidenceOf(m_file, m_columns);
        ReadingRules given = m_wish.rules;
        if (m_mapping) {
            const ReadingRules remembered = whereAsked(
                {.dateOrder = m_mapping->dateOrder, .durationForm = m_mapping->durationForm},
                evidence);
            given.dateOrder = given.dateOrder ? given.dateOrder : remembered.dateOrder;
            given.durationForm = given.durationForm ? given.durationForm : remembered.durationForm;
        }
        m_rules = rulesFrom(m_file, evidence, given);
        if (evidence.asksDateOrder() && !m_rules.dateOrder) {
            return dateOrderQuestion(evidence.dates.contradictsItself()) + QLatin1Char(' ') +
                   ImportVerbWords::tr("On the command line: --date-order dmy or mdy.");
        }
        if (evidence.asksDurationForm() && !m_rules.durationForm) {
            return durationFormQuestion() + QLatin1Char(' ') +
                   ImportVerbWords::tr("On the command line: --time-form h:mm or mm:ss.");
        }
        if (m_wish.through && (*m_wish.through > today ||
                               *m_wish.through < m_found.onFile.records.course.startDate)) {
            return ImportVerbWords::tr("--through: %1 lies outside the course or after today. "
                                       "Give a day of the course up to today.")
                .arg(QString::fromStdString(isoDate(*m_wish.through)));
        }
        m_rows = reportedRows(m_file, m_columns, m_rules).value();
        m_import = planImport(m_rows, m_columns, m_found.onFile);
        m_import.takeFileForAll(m_wish.takeFile.value_or(false));
        return std::nullopt;
    }

    /// Why nothing is taken over as things stand.
    std::optional<Problem> undecided() const
    {
        const auto conflicts = static_cast<int>(m_import.count(RowState::conflict));
        if (conflicts == 0 || m_wish.takeFile) {
            return std::nullopt;
        }
        return ImportVerbWords::tr("%n row(s) differ from what is on file. Nothing was taken "
                                   "over. Look at them with --dry-run, then choose --take ours "
                                   "or --take file.",
                                   nullptr, conflicts);
    }

    Result<void> takeOver(db::Store& store) const
    {
        db::Author author = commandLineAuthor();
        const auto by =
            std::ranges::find(m_found.practitioners, m_wish.by.toStdString(), &Practitioner::name);
        if (by != m_found.practitioners.end()) {
            author = {.practitioner = by->id, .name = by->name};
        }
        return store.write(author, "import diary", [&](db::Writing& writing) {
            db::takeOverDiary(writing, takeOverOf(m_import, m_found.onFile, m_wish.through));
            if (!m_wish.remember.isEmpty()) {
                db::saveDiaryMapping(
                    writing, mappingOf(m_wish.remember.toStdString(), m_file, m_columns, m_rules),
                    m_found.remembered.version);
            }
        });
    }

    ImportReport report(bool isDone) const
    {
        return {
            m_file, m_rows,        m_import, m_wish.patient, m_found.onFile.records.course.number,
            isDone, m_wish.through};
    }

private:
    static Problem errorOf(const Error& error)
    {
        return errorText(error, QuantityText(QLocale::c()));
    }
    Problem unknownMapping() const
    {
        QStringList names;
        for (const db::DiaryMapping& mapping : m_found.remembered.mappings) {
            names.append(QString::fromStdString(mapping.name));
        }
        return names.isEmpty()
                   ? ImportVerbWords::tr("--mapping: nothing is remembered yet. Use --remember "
                                         "NAME once.")
                   : ImportVerbWords::tr("--mapping: “%1” is not remembered. There are: %2.")
                         .arg(m_wish.mapping, names.join(QStringLiteral(", ")));
    }
    QString headings() const
    {
        QStringList all;
        for (const std::string& heading : m_file.table.headings()) {
            all.append(QString::fromStdString(heading).simplified());
        }
        return all.join(QStringLiteral(", "));
    }

    const ImportWish& m_wish;
    const Found& m_found;
    std::optional<db::DiaryMapping> m_mapping;
    DiaryFile m_file;
    ColumnMap m_columns;
    ReadingRules m_rules;
    std::vector<ReportedRow> m_rows;
    DiaryImport m_import;
};

int refuseWith(const Problem& problem, const CommandContext& context)
{
    context.err << problem << '\n';
    return exit_code::badInput;
}

/// Why the patient, the course or the practitioner named can't be taken.
std::optional<Problem> problemOf(const Found& found, const ImportWish& wish)
{
    if (!found.isPatient) {
        return noSuchPatient(wish.patient, wish.store);
    }
    if (const auto* problem = std::get_if<Problem>(&found.course)) {
        return *problem;
    }
    const bool isKnown = std::ranges::find(found.practitioners, wish.by.toStdString(),
                                           &Practitioner::name) != found.practitioners.end();
    if (!wish.by.isEmpty() && !isKnown) {
        return ImportVerbWords::tr("No practitioner is called %1 in %2.").arg(wish.by, wish.store);
    }
    return std::nullopt;
}

int importFrom(const ImportWish& wish, const CommandContext& context)
{
    const Date today = context.clock.today();
    const auto store = db::Store::open(
        wish.store, wish.isDryRun ? db::Opening::readOnly : db::Opening::existing, context.clock);
    if (!store) {
        return refuse(store.error(), context);
    }
    const auto found =
        (*store)->read([&](db::Reading& reading) { return read(reading, wish, today); });
    if (!found) {
        return refuse(found.error(), context);
    }
    if (const auto problem = problemOf(*found, wish)) {
        return refuseWith(*problem, context);
    }
    ImportCommand command(wish, *found);
    std::optional<Problem> problem = command.readFile();
    problem = problem ? problem : command.matchColumns();
    problem = problem ? problem : command.readRows(today);
    problem = problem || wish.isDryRun ? problem : command.undecided();
    if (problem) {
        return refuseWith(*problem, context);
    }
    if (!wish.isDryRun) {
        if (const auto saved = command.takeOver(**store); !saved) {
            return refuse(saved.error(), context);
        }
    }
    const ImportReport report = command.report(!wish.isDryRun);
    return give(wish.asJson ? QString::fromUtf8(importReportJson(report))
                            : importReportText(report),
                context);
}

} // namespace

int importDiaryVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    addImportOptions(parser);
    if (const auto end =
            endsAtOptions(parser, QStringLiteral("import-diary"), arguments,
                          {QStringLiteral("store"), QStringLiteral("patient")}, 1, context)) {
        return *end;
    }
    const auto wish = importWishOf(parser);
    if (const auto* problem = std::get_if<Problem>(&wish)) {
        return misuse(*problem, context);
    }
    return importFrom(std::get<ImportWish>(wish), context);
}

} // namespace quadrille::app
