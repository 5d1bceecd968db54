// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/words/error_text.h"

#include "app/words/trade_words.h"

#include <QCoreApplication>

namespace quadrille::app
{

namespace
{

struct ErrorWords {
    Q_DECLARE_TR_FUNCTIONS(ErrorWords)
};

QString figure(const Error& error, std::size_t index, const QuantityText& text)
{
    return index < error.figures.size() ? text.amount(error.figures[index]) : QStringLiteral("—");
}

QString valueError(const Error& error, const QuantityText& text)
{
    const QString field = fieldName(error.field);
    const QString subject = QString::fromStdString(error.subject);
    switch (error.code) {
    case ErrorCode::outOfRange:
        if (error.figures.size() > 2) {
            return ErrorWords::
                tr("%1 of %2 is outside what can be calculated (%3 to %4). Enter another value.")
                    .arg(field, figure(error, 0, text), figure(error, 1, text),
                         figure(error, 2, text));
        }
        return ErrorWords::tr(
                   "%1 of %2 is outside what can be calculated (limit %3). Enter another value.")
            .arg(field, figure(error, 0, text), figure(error, 1, text));
    case ErrorCode::impossible:
        return ErrorWords::tr("%1 does not go with the other settings. Change it.").arg(field);
    case ErrorCode::notFilled:
        return ErrorWords::tr("%1 is empty. Fill it in.").arg(field);
    case ErrorCode::notUnique:
        return ErrorWords::tr("“%1” is taken already. Choose another.").arg(subject);
    default:
        return {};
    }
}

QString curveError(const Error& error, const QuantityText& text)
{
    switch (error.code) {
    case ErrorCode::tooFewDurations:
        return ErrorWords::tr("A curve needs thresholds at %1 different phase durations or more "
                              "(here: %2). Measure at more phase durations.")
            .arg(figure(error, 1, text), figure(error, 0, text));
    case ErrorCode::noFit:
        if (error.figures.size() > 1) {
            return ErrorWords::tr("The thresholds do not follow this law: rheobase %1 and "
                                  "chronaxie %2 would not both be above 0. Check the thresholds; "
                                  "they fall as the phase grows longer, but less than by half for "
                                  "twice the duration.")
                .arg(figure(error, 0, text), figure(error, 1, text));
        }
        return ErrorWords::tr("The thresholds do not follow this law. Check them; they fall as the "
                              "phase grows longer, but less than by half for twice the duration.");
    default:
        return {};
    }
}

QString screeningError(const Error& error, const QuantityText& text)
{
    const QString question = QString::fromStdString(error.subject);
    switch (error.code) {
    case ErrorCode::notScreened:
        return ErrorWords::tr("This course has no screening. Nothing is issued, printed or "
                              "measured before it is answered and signed on the Screening page.");
    case ErrorCode::screeningNotSigned:
        return ErrorWords::tr("The screening of this course is not signed. Nothing is issued, "
                              "printed or measured before it is signed on the Screening page.");
    case ErrorCode::screeningTooOld: {
        const auto day = dateFromIso(error.detail);
        return ErrorWords::tr("The screening of this course held until %1. Screen again on the "
                              "Screening page.")
            .arg(day ? text.date(*day) : QString::fromStdString(error.detail));
    }
    case ErrorCode::screeningBlocks:
        break;
    default:
        return {};
    }
    const QString what =
        error.detail == "absent" ? ErrorWords::tr("The skin under a pad feels nothing")
        : error.detail == "yes"
            ? ErrorWords::tr("“%1” is answered yes").arg(question)
            : ErrorWords::tr("“%1” is not known, which counts as yes").arg(question);
    return ErrorWords::tr("The screening blocks this: %1. Resolve it, or let a practitioner record "
                          "on the Screening page why to go ahead.")
        .arg(what);
}

QString openingError(const Error& error)
{
    const QString file = QString::fromStdString(error.subject);
    const QString detail = QString::fromStdString(error.detail);
    switch (error.code) {
    case ErrorCode::cannotOpen:
        return ErrorWords::tr("The practice file %1 can’t be opened (%2). Check that it exists and "
                              "that you may read it.")
            .arg(file, detail);
    case ErrorCode::notAStore:
        return ErrorWords::tr("%1 is not a practice file. Nothing was changed. Choose another file "
                              "or restore a backup.")
            .arg(file);
    case ErrorCode::logMissing:
        return ErrorWords::tr("The file %1-wal that belongs to %1 is missing, and with it the "
                              "latest changes. Nothing was changed. Put it back beside the "
                              "practice file, or restore a backup.")
            .arg(file);
    case ErrorCode::onNetworkShare:
        return ErrorWords::tr("%1 lies on a network share (%2), where several programs can’t write "
                              "safely. Nothing was changed. Keep the practice file on this "
                              "machine’s own disk and let the backups go to the share.")
            .arg(file, detail);
    case ErrorCode::newerStore:
        return ErrorWords::tr("%1 was written by a newer version of this program. Nothing was "
                              "changed. Install the newer "
                              "version to open it.")
            .arg(file);
    case ErrorCode::migrationFailed:
        return ErrorWords::tr(
                   "%1 could not be brought to this version (%2). The file is as it was.")
            .arg(file, detail);
    case ErrorCode::storeDamaged:
        return ErrorWords::tr("The practice file is damaged (%1). Nothing was changed. Stop "
                              "entering and restore a backup.")
            .arg(detail);
    default:
        return {};
    }
}

QString savingError(const Error& error)
{
    const QString subject = QString::fromStdString(error.subject);
    const QString detail = QString::fromStdString(error.detail);
    switch (error.code) {
    case ErrorCode::readOnly:
        return ErrorWords::tr(
            "Not saved: the practice file can’t be written. Your changes stay open. Check the "
            "permissions of the file and its folder.");
    case ErrorCode::locked:
        return ErrorWords::tr("Not saved: another program holds the practice file. Your changes "
                              "stay open. Try again in a "
                              "moment.");
    case ErrorCode::diskFull:
        return ErrorWords::tr("Not saved: the disk is full. Your changes stay open.");
    case ErrorCode::diskFault:
        return ErrorWords::tr("Not saved: the disk reports a fault (%1). Your changes stay open. "
                              "Save a backup on another disk.")
            .arg(detail);
    case ErrorCode::changedElsewhere:
        return detail.isEmpty()
                   ? ErrorWords::tr("Not saved: this record was changed elsewhere in the meantime. "
                                    "Your changes stay open.")
                   : ErrorWords::tr("Not saved: %1 changed this record in the meantime. Your "
                                    "changes stay open.")
                         .arg(detail);
    case ErrorCode::refused:
        if (error.field == Field::inventoryNumber) {
            return ErrorWords::tr("Not erased: what is lent to this person has to be taken back "
                                  "first (%1).")
                .arg(detail);
        }
        return ErrorWords::tr("Not saved: %1.").arg(detail);
    case ErrorCode::notFound:
        return ErrorWords::tr("%1 was not found.").arg(subject);
    case ErrorCode::storeFailed:
        return ErrorWords::tr("The practice file reports a fault: %1. Nothing was changed.")
            .arg(detail);
    default:
        return {};
    }
}

QString fileError(const Error& error)
{
    const QString subject = QString::fromStdString(error.subject);
    const QString detail = QString::fromStdString(error.detail);
    switch (error.code) {
    case ErrorCode::cannotRead:
        return ErrorWords::tr("%1 can’t be read (%2).").arg(subject, detail);
    case ErrorCode::cannotWrite:
        return ErrorWords::tr("%1 can’t be written (%2).").arg(subject, detail);
    case ErrorCode::badFormat:
        return ErrorWords::tr("%1: %2.").arg(subject, detail);
    case ErrorCode::erasedNotScrubbed:
        return ErrorWords::
            tr("The person is erased, but traces may be left in %1: another program "
               "has it open, or the disk is full. Mend that, then let the command line erase the "
               "same reference again: that writes the file anew.")
                .arg(subject);
    case ErrorCode::passphraseNeeded:
        return ErrorWords::tr("%1 is sealed with a passphrase. Nothing was changed. Name the file "
                              "that holds it with --passphrase-file.")
            .arg(subject);
    case ErrorCode::wrongPassphrase:
        return ErrorWords::tr("The passphrase does not open %1. Nothing was changed. Give the one "
                              "that it was sealed with.")
            .arg(subject);
    case ErrorCode::backupDamaged:
        return ErrorWords::tr("The backup %1 is not whole (%2). Nothing was changed. Choose an "
                              "earlier one.")
            .arg(subject, detail);
    case ErrorCode::newerThanBackup:
        return ErrorWords::tr("%1 has changes that the backup has not, or can’t be read. Nothing "
                              "was changed. With --force the backup takes its place and the "
                              "present file is kept beside it.")
            .arg(subject);
    case ErrorCode::ambiguous:
        return ErrorWords::tr("%1 is not clear. Choose one of: %2.").arg(subject, detail);
    default:
        return {};
    }
}

} // namespace

QString errorText(const Error& error, const QuantityText& text)
{
    for (const QString& sentence :
         {valueError(error, text), curveError(error, text), screeningError(error, text),
          openingError(error), savingError(error), fileError(error)}) {
        if (!sentence.isEmpty()) {
            return sentence;
        }
    }
    return QString::fromStdString(error.detail);
}

} // namespace quadrille::app
