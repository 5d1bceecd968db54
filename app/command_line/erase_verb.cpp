// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/care_verbs.h"
#include "app/command_line/course_choice.h"
#include "app/command_line/verb_options.h"

#include "db/backup.h"
#include "db/people.h"

#include <QCoreApplication>
#include <QFileInfo>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct EraseWords {
    Q_DECLARE_TR_FUNCTIONS(EraseWords)
};

std::optional<db::ErasureGround> groundOf(const QString& word)
{
    if (word == QStringLiteral("request")) {
        return db::ErasureGround::request;
    }
    if (word == QStringLiteral("retention-over")) {
        return db::ErasureGround::retentionOver;
    }
    if (word == QStringLiteral("entered-in-error")) {
        return db::ErasureGround::enteredInError;
    }
    return std::nullopt;
}

void addOptions(QCommandLineParser& parser)
{
    parser.setApplicationDescription(
        EraseWords::tr("Erases everything of a patient from a practice file: records, plans, "
                       "diary, and the values in the change record. It can’t be undone. A record "
                       "of the act stays."));
    parser.addOptions(
        {storeFileOption(),
         patientOption(),
         {QStringLiteral("confirm"), EraseWords::tr("The reference once more."),
          QStringLiteral("REF")},
         {QStringLiteral("ground"), EraseWords::tr("request, retention-over or entered-in-error."),
          QStringLiteral("GROUND")},
         {QStringLiteral("by"), EraseWords::tr("The practitioner who answers for it."),
          QStringLiteral("NAME")},
         {QStringLiteral("copies"),
          EraseWords::tr("A further folder in which backups lie; may be given several times."),
          QStringLiteral("FOLDER")}});
}

/// Who answers for it, and the patient.
struct Parties {
    std::optional<Practitioner> practitioner;
    std::optional<Patient> patient;
};

Parties partiesIn(db::Reading& reading, const QCommandLineParser& parser)
{
    Parties parties;
    const auto all = db::practitioners(reading);
    const auto named = std::ranges::find(all, parser.value(QStringLiteral("by")).toStdString(),
                                         &Practitioner::name);
    if (named != all.end()) {
        parties.practitioner = *named;
    }
    parties.patient =
        db::patientByReference(reading, parser.value(QStringLiteral("patient")).toStdString());
    return parties;
}

/// Nobody has the reference or the name: perhaps because an erasure was cut off before the file was
/// written anew.
int refuseUnknown(const QString& sentence, db::Store& store, const CommandContext& context)
{
    const Result<bool> scrubbed = store.scrubErased();
    if (!scrubbed) {
        return refuse(scrubbed.error(), context);
    }
    if (*scrubbed) {
        context.out << EraseWords::tr("Whoever was erased before has left no trace in the file.")
                    << '\n';
    }
    context.err << sentence << '\n';
    return exit_code::badInput;
}

void listCopies(const Patient& patient, const QCommandLineParser& parser,
                const CommandContext& context)
{
    const QString store = parser.value(QStringLiteral("store"));
    const QStringList folders =
        QStringList{QFileInfo(store).absolutePath(), db::usualCopyFolder(store)} +
        parser.values(QStringLiteral("copies"));
    const QStringList copies = db::copiesHolding(patient, store, folders);
    if (copies.isEmpty()) {
        context.out << EraseWords::tr("No backup that still holds this patient was found in: %1.")
                           .arg(folders.join(QStringLiteral(", ")))
                    << '\n';
        return;
    }
    context.out
        << EraseWords::tr(
               "Backups that still hold this patient, or may, because they are sealed or can’t be "
               "read whole:")
        << '\n';
    for (const QString& copy : copies) {
        context.out << copy << '\n';
    }
}

} // namespace

int eraseVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    addOptions(parser);
    if (const auto end = endsAtOptions(parser, QStringLiteral("erase"), arguments,
                                       {QStringLiteral("store"), QStringLiteral("patient"),
                                        QStringLiteral("confirm"), QStringLiteral("ground"),
                                        QStringLiteral("by")},
                                       0, context)) {
        return *end;
    }
    const auto ground = groundOf(parser.value(QStringLiteral("ground")));
    const QString reference = parser.value(QStringLiteral("patient"));
    if (!ground || reference != parser.value(QStringLiteral("confirm"))) {
        context.err << (ground ? EraseWords::tr("--confirm is not the same reference as --patient. "
                                                "Nothing was erased.")
                               : EraseWords::tr("--ground takes request, retention-over or "
                                                "entered-in-error."))
                    << '\n';
        return exit_code::usage;
    }
    const auto store = db::Store::open(parser.value(QStringLiteral("store")), db::Opening::existing,
                                       context.clock);
    if (!store) {
        return refuse(store.error(), context);
    }
    const auto parties =
        (*store)->read([&](db::Reading& reading) { return partiesIn(reading, parser); });
    if (!parties) {
        return refuse(parties.error(), context);
    }
    if (!parties->patient || !parties->practitioner) {
        const QString file = parser.value(QStringLiteral("store"));
        return refuseUnknown(parties->patient
                                 ? EraseWords::tr("No practitioner is called %1 in %2.")
                                       .arg(parser.value(QStringLiteral("by")), file)
                                 : noSuchPatient(reference, file),
                             **store, context);
    }
    const db::Author author{.practitioner = parties->practitioner->id,
                            .name = parties->practitioner->name};
    const auto erased = (*store)->erase(author, *parties->patient->id, *ground);
    if (!erased && erased.error().code != ErrorCode::erasedNotScrubbed) {
        return refuse(erased.error(), context);
    }
    context.out << EraseWords::tr("Patient %1 is erased.").arg(reference) << '\n';
    listCopies(*parties->patient, parser, context);
    return erased ? exit_code::done : refuse(erased.error(), context);
}

} // namespace quadrille::app
