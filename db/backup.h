// SPDX-License-Identifier: GPL-3.0-or-later
// Copies of a whole store, and the way back. A copy is one file: a store of its own, or that store
// sealed under a passphrase. Everything is made under another name in the same folder and takes its
// name only when it is whole.
#pragma once

#include "db/sealed_file.h"
#include "db/verification.h"

#include "core/calendar.h"
#include "core/people.h"
#include "core/result.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <string>
#include <vector>

namespace quadrille::db
{

struct Passphrase {
    std::string words;
    SealCost cost = usualSealCost();
};

/// Writes a copy of `store` to `out`, a name that is free. Works while the store is in use. Errors:
/// those of Store::open, cannotWrite (also when `out` is taken), diskFull.
Result<void> writeBackup(const QString& store, const QString& out,
                         const std::optional<Passphrase>& passphrase);

/// Copies a store of this schema into `target`, an empty file that is there. Throws what opening
/// and copying do.
void copyStore(const QString& store, const QString& target);

struct Restored {
    QString copyAside; ///< where what stood there before is now; empty when nothing did
    std::vector<Complaint> remarks; ///< dates in the backup that contradict each other
};
/// Puts a backup in the place of `store`, whatever state that is in; what stood there is kept
/// beside it. The backup is looked through first (verify), and nothing is touched when it is not
/// whole. Errors: cannotRead, passphraseNeeded, wrongPassphrase, backupDamaged, newerThanBackup
/// (the store has changes that the backup has not, or can't be read to tell, and `force` is false),
/// newerStore, locked (another program has the store open), cannotWrite, diskFull.
Result<Restored> restoreBackup(const QString& backup, const QString& store,
                               const std::optional<Passphrase>& passphrase, bool force,
                               const Clock& clock);

/// An automatic copy beside others in a folder: "practice.copy-20260312T104200Z.quadrille".
struct DailyCopy {
    QString file;
    Moment madeAt;
};
/// The automatic copies of a store in a folder, the latest first.
std::vector<DailyCopy> dailyCopiesOf(const QString& store, const QString& folder);
/// The folder in which a store's copies are kept unless a person chooses another: "copies" beside
/// it.
QString usualCopyFolder(const QString& store);
/// Makes today's copy unless there is one, and takes away those that copiesToKeep() lets go; the
/// folder is made when it is missing. Gives the new copy, or nothing when there was one.
Result<std::optional<QString>> copyOnceADay(const QString& store, const QString& folder,
                                            const Clock& clock);

/// Copies in these folders that hold the patient (with the key, and the reference, name or birth
/// date that are given), or may: sealed backups, and files that bear the store's name and can't be
/// read whole.
QStringList copiesHolding(const Patient& patient, const QString& store, const QStringList& folders);

} // namespace quadrille::db
