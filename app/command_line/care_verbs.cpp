// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/care_verbs.h"

#include "app/command_line/verb_options.h"
#include "app/words/damage_text.h"
#include "app/words/fault_text.h"

#include "db/anonymising.h"
#include "db/backup.h"
#include "db/verification.h"

#include <QCoreApplication>

namespace quadrille::app
{

namespace
{

struct CareWords {
    Q_DECLARE_TR_FUNCTIONS(CareWords)
};

/// Why a store can't be opened, with the copies that could be restored.
int refuseStore(const Error& error, const QString& store, const CommandContext& context)
{
    context.err << damageText(error, store, db::dailyCopiesOf(store, db::usualCopyFolder(store)),
                              QuantityText(QLocale::c()))
                << '\n';
    return exit_code::badInput;
}

/// The passphrase that the options name, if they name one; the exit code when it can't be read.
struct PassphraseWish {
    std::optional<db::Passphrase> passphrase = std::nullopt;
    std::optional<int> end = std::nullopt;
};

PassphraseWish passphraseOf(const QCommandLineParser& parser, const CommandContext& context)
{
    const QString file = parser.value(QStringLiteral("passphrase-file"));
    if (file.isEmpty()) {
        return {};
    }
    const auto words = passphraseFrom(file);
    if (!words) {
        return {std::nullopt, refuse(words.error(), context)};
    }
    return {db::Passphrase{*words}, std::nullopt};
}

} // namespace

int verifyVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(
        CareWords::tr("Looks through a practice file: pages, references, guards, issued plans, the "
                      "change record, dates. Prints what is wrong and where."));
    parser.addOption(storeFileOption());
    if (const auto end = endsAtOptions(parser, QStringLiteral("verify"), arguments,
                                       {QStringLiteral("store")}, 0, context)) {
        return *end;
    }
    const QString file = parser.value(QStringLiteral("store"));
    const auto store = db::Store::open(file, db::Opening::readOnly, context.clock);
    if (!store) {
        return refuseStore(store.error(), file, context);
    }
    struct Findings {
        std::vector<db::Complaint> complaints;
        db::ChangeRecordEnd end;
    };
    const auto found = (*store)->read([](db::Reading& reading) {
        return Findings{db::verify(reading), db::changeRecordEnd(reading)};
    });
    if (!found) {
        return refuseStore(found.error(), file, context);
    }
    for (const db::Complaint& complaint : found->complaints) {
        context.out << faultText(complaint) << '\n';
    }
    if (!found->complaints.empty()) {
        context.err << CareWords::tr("%1 has faults. Stop entering, keep the file as it is, and "
                                     "restore a backup that verifies.")
                           .arg(file)
                    << '\n';
        return exit_code::badInput;
    }
    context.out << CareWords::tr(
                       "Nothing is wrong. The change record has %1 rows and ends with %2.")
                       .arg(QString::number(found->end.rows),
                            QString::fromStdString(found->end.chain))
                << '\n';
    return exit_code::done;
}

int backupVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(
        CareWords::tr("Writes a copy of a practice file, also while it is in use."));
    parser.addOptions({storeFileOption(),
                       outFileOption(CareWords::tr("Where the copy goes; must not exist yet.")),
                       passphraseFileOption()});
    if (const auto end =
            endsAtOptions(parser, QStringLiteral("backup"), arguments,
                          {QStringLiteral("store"), QStringLiteral("out")}, 0, context)) {
        return *end;
    }
    const PassphraseWish wish = passphraseOf(parser, context);
    if (wish.end) {
        return *wish.end;
    }
    const QString store = parser.value(QStringLiteral("store"));
    const QString out = parser.value(QStringLiteral("out"));
    if (const auto written = db::writeBackup(store, out, wish.passphrase); !written) {
        return refuse(written.error(), context);
    }
    context.out << (wish.passphrase
                        ? CareWords::tr("Backup written to %1, sealed with the passphrase.")
                        : CareWords::tr("Backup written to %1."))
                       .arg(out)
                << '\n';
    return exit_code::done;
}

int restoreVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(
        CareWords::tr("Puts a backup in the place of a practice file. What stands there is kept "
                      "beside it under another name."));
    parser.addPositionalArgument(QStringLiteral("BACKUP"), CareWords::tr("The backup."));
    const QCommandLineOption force(
        QStringLiteral("force"),
        CareWords::tr("Also over a practice file that has changes the backup has not, or that "
                      "can’t be read."));
    parser.addOptions({storeFileOption(), passphraseFileOption(), force});
    if (const auto end = endsAtOptions(parser, QStringLiteral("restore"), arguments,
                                       {QStringLiteral("store")}, 1, context)) {
        return *end;
    }
    if (parser.positionalArguments().size() != 1) {
        return misuse(CareWords::tr("Give one backup: quadrille restore BACKUP --store FILE."),
                      context);
    }
    const PassphraseWish wish = passphraseOf(parser, context);
    if (wish.end) {
        return *wish.end;
    }
    const QString store = parser.value(QStringLiteral("store"));
    const auto restored = db::restoreBackup(parser.positionalArguments().first(), store,
                                            wish.passphrase, parser.isSet(force), context.clock);
    if (!restored) {
        return refuse(restored.error(), context);
    }
    context.out << (restored->copyAside.isEmpty()
                        ? CareWords::tr("Restored to %1.").arg(store)
                        : CareWords::tr("Restored to %1. What stood there is now %2.")
                              .arg(store, restored->copyAside))
                << '\n';
    for (const db::Complaint& remark : restored->remarks) {
        context.out << faultText(remark) << '\n';
    }
    return exit_code::done;
}

int anonymiseVerb(const QStringList& arguments, const CommandContext& context)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(
        CareWords::tr("Writes a copy of a practice file for those who look for a fault: structure "
                      "and amounts, no names, no free text, all dates shifted by one distance."));
    parser.addOptions({storeFileOption(),
                       outFileOption(CareWords::tr("Where the copy goes; must not exist yet."))});
    if (const auto end =
            endsAtOptions(parser, QStringLiteral("anonymise"), arguments,
                          {QStringLiteral("store"), QStringLiteral("out")}, 0, context)) {
        return *end;
    }
    const QString out = parser.value(QStringLiteral("out"));
    if (const auto written =
            db::anonymise(parser.value(QStringLiteral("store")), out, db::randomShift());
        !written) {
        return refuse(written.error(), context);
    }
    context.out << CareWords::tr("Copy without names and texts written to %1.").arg(out) << '\n';
    return exit_code::done;
}

} // namespace quadrille::app
