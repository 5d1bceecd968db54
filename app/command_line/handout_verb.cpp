// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/handout_verb.h"

#include "app/command_line/command_line.h"
#include "app/command_line/course_choice.h"
#include "app/command_line/verb_options.h"
#include "app/print/handout_document.h"
#include "app/print/handout_words.h"
#include "app/print/pdf_writer.h"
#include "app/words/error_text.h"

#include "db/course_events.h"
#include "db/courses.h"
#include "db/loans.h"
#include "db/people.h"
#include "db/plans.h"
#include "db/screenings.h"
#include "db/store.h"

#include "core/follow_up.h"
#include "core/handout_content.h"
#include "core/screening_gate.h"

#include <QCommandLineParser>
#include <QFileInfo>

#include <algorithm>
#include <iterator>
#include <variant>

namespace quadrille::app
{

namespace
{

struct HandoutVerbWords {
    Q_DECLARE_TR_FUNCTIONS(HandoutVerbWords)
};

/// What the command line asks for.
struct Wish {
    QString store;
    QString patient;
    std::optional<int> course;
    PaperChoice paper;
    QString file;
};

/// Why it can't be done, in one sentence.
using Problem = QString;

const QCommandLineOption& paperOption()
{
    static const QCommandLineOption option(QStringLiteral("paper"),
                                           HandoutVerbWords::tr("a4 or letter."),
                                           QStringLiteral("PAPER"), QStringLiteral("a4"));
    return option;
}

const QCommandLineOption& largePrintOption()
{
    static const QCommandLineOption option(QStringLiteral("large-print"),
                                           HandoutVerbWords::tr("Larger letters."));
    return option;
}

QCommandLineOption outOption()
{
    return outFileOption(HandoutVerbWords::tr("Where the PDF goes."));
}

std::variant<Wish, Problem> wishOf(const QCommandLineParser& parser)
{
    const auto course = courseNumberIn(parser);
    if (const auto* problem = std::get_if<Problem>(&course)) {
        return *problem;
    }
    Wish wish{parser.value(storeFileOption()),
              parser.value(patientOption()),
              std::get<std::optional<int>>(course),
              {},
              parser.value(outOption())};
    const QString paper = parser.value(paperOption()).toLower();
    if (paper != QStringLiteral("a4") && paper != QStringLiteral("letter")) {
        return HandoutVerbWords::tr("--paper takes a4 or letter.");
    }
    wish.paper.format = paper == QStringLiteral("letter") ? PaperFormat::letter : PaperFormat::a4;
    wish.paper.size = parser.isSet(largePrintOption()) ? PrintSize::large : PrintSize::normal;
    return wish;
}

/// What the store knows, read in one view.
struct Records {
    Practice practice;
    std::optional<Patient> patient;
    std::vector<Course> courses;
    std::vector<std::vector<Plan>> plans;            ///< of each course
    std::vector<ScreeningGate> gates;                ///< of each course, for the plan issued last
    std::vector<std::vector<db::InventoryRow>> lent; ///< to each course
};

Records read(db::Reading& reading, const QString& reference, Date today)
{
    Records records;
    records.practice = db::practice(reading).value_or(Practice{});
    records.patient = db::patientByReference(reading, reference.toStdString());
    if (records.patient) {
        records.courses = db::coursesOf(reading, *records.patient->id);
        for (const Course& course : records.courses) {
            const auto& plans = records.plans.emplace_back(db::plansOf(reading, *course.id));
            records.gates.push_back(
                db::gateOf(reading, *course.id,
                           plans.empty() ? std::vector<Block>() : plans.back().blocks, today));
            records.lent.push_back(db::unitsLentTo(reading, *course.id));
        }
    }
    return records;
}

/// What is printed, and what the record says of it afterwards.
struct Printing {
    HandoutContent content;
    PrintedDocument document;
};

std::variant<Printing, Problem> printingOf(const Wish& wish, db::Store& store, const Clock& clock,
                                           const QuantityText& text)
{
    const auto records = store.read(
        [&](db::Reading& reading) { return read(reading, wish.patient, clock.today()); });
    if (!records) {
        return errorText(records.error(), text);
    }
    if (!records->patient) {
        return noSuchPatient(wish.patient, wish.store);
    }
    const auto chosen =
        chooseCourse(records->courses, wish.patient, wish.course, clock.today(), text);
    if (const auto* problem = std::get_if<QString>(&chosen)) {
        return *problem;
    }
    const Course& course = std::get<Course>(chosen);
    const auto at = std::ranges::find(records->courses, course) - records->courses.begin();
    const std::vector<Plan>& plans = records->plans[static_cast<std::size_t>(at)];
    if (plans.empty()) {
        return HandoutVerbWords::tr("No plan is issued for course %1 of patient %2. Issue the plan "
                                    "first.")
            .arg(QString::number(course.number), wish.patient);
    }
    // The plan that the patient is to follow next: the one issued last.
    auto content =
        handoutContent(records->practice, *records->patient, course, plans.back(),
                       records->gates[static_cast<std::size_t>(at)], std::nullopt, clock.today());
    if (!content) {
        return errorText(content.error(), text);
    }
    for (const db::InventoryRow& row : records->lent[static_cast<std::size_t>(at)]) {
        if (row.unit.stimulator == plans.back().stimulator.id) { // the card is for its kind only
            content->inventoryNumbers.push_back(row.unit.inventoryNumber);
        }
    }
    if (content->cards.empty()) {
        return HandoutWords(text).planIsOver(*content);
    }
    return Printing{.content = *std::move(content),
                    .document = {.course = course.id,
                                 .plan = plans.back().id,
                                 .kind = DocumentKind::handout,
                                 .medium = Medium::pdf}};
}

bool sameFile(const QString& a, const QString& b)
{
    const QString place = QFileInfo(a).canonicalFilePath();
    return !place.isEmpty() && place == QFileInfo(b).canonicalFilePath();
}

int writeHandout(const Wish& wish, const CommandContext& context)
{
    const QuantityText text{QLocale()};
    if (sameFile(wish.store, wish.file)) {
        context.err << HandoutVerbWords::tr(
                           "--out names the practice file itself. Choose another file.")
                    << '\n';
        return exit_code::badInput;
    }
    const auto store = db::Store::open(wish.store, db::Opening::existing, context.clock);
    if (!store) {
        context.err << errorText(store.error(), text) << '\n';
        return exit_code::badInput;
    }
    if (!(*store)->isWritable()) {
        context.err << HandoutVerbWords::tr("%1 can’t be written, so the record could not say what "
                                            "was handed out. Nothing was printed. Check the "
                                            "permissions of the file and its folder.")
                           .arg(wish.store)
                    << '\n';
        return exit_code::badInput;
    }
    const auto chosen = printingOf(wish, **store, context.clock, text);
    if (const auto* problem = std::get_if<Problem>(&chosen)) {
        context.err << *problem << '\n';
        return exit_code::badInput;
    }
    const auto& printing = std::get<Printing>(chosen);
    const HandoutDocument document(HandoutWords(text).of(printing.content), wish.paper);
    if (const auto written = writePdf(document, wish.file); !written) {
        context.err << errorText(written.error(), text) << '\n';
        return exit_code::badInput;
    }
    const auto entered =
        (*store)->write(commandLineAuthor(), "hand out", [&](db::Writing& writing) {
            return db::addPrintedDocument(writing, printing.document);
        });
    if (!entered) {
        context.err << HandoutVerbWords::tr("%1 is written, but the record does not say so. %2")
                           .arg(wish.file, errorText(entered.error(), text))
                    << '\n';
        return exit_code::badInput;
    }
    context.out << HandoutVerbWords::tr("Handout written to %1, %2 pages.")
                       .arg(wish.file, QString::number(document.pageCount()))
                << '\n';
    return exit_code::done;
}

} // namespace

int handoutVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(
        HandoutVerbWords::tr("Writes a patient’s handout, of the plan issued last, as PDF."));
    parser.addOptions({storeFileOption(), patientOption(), courseOption(), paperOption(),
                       largePrintOption(), outOption()});
    if (const auto end = endsAtOptions(
            parser, QStringLiteral("handout"), arguments,
            {QStringLiteral("store"), QStringLiteral("patient"), QStringLiteral("out")}, 0,
            context)) {
        return *end;
    }
    const auto wish = wishOf(parser);
    if (const auto* problem = std::get_if<Problem>(&wish)) {
        return misuse(*problem, context);
    }
    return writeHandout(std::get<Wish>(wish), context);
}

} // namespace quadrille::app
