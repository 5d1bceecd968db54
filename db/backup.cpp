// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/backup.h"

#include "db/caught.h"
#include "db/change_chain.h"
#include "db/codec.h"
#include "db/file_system.h"
#include "db/migrations.h"
#include "db/opening.h"
#include "db/passing_file.h"
#include "db/store_care.h"

#include <QDir>
#include <QFileInfo>

#include <cerrno>
#include <sys/stat.h>
#include <unistd.h>

namespace quadrille::db
{

namespace
{

[[noreturn]] void failWith(ErrorCode code, const QString& file, const std::string& detail = {})
{
    throw Failure({.code = code, .subject = file.toStdString(), .detail = detail});
}

class NoClock : public Clock
{
public:
    Date today() const override { return {}; }
    Moment now() const override { return {}; }
};

void copyBytes(QFile& source, QFile& target)
{
    constexpr qint64 piece = 1 << 20;
    if (!target.open(QIODevice::WriteOnly | QIODevice::Unbuffered)) {
        failWith(ErrorCode::cannotWrite, target.fileName(), target.errorString().toStdString());
    }
    while (!source.atEnd()) {
        const QByteArray bytes = source.read(piece);
        if (bytes.isEmpty()) {
            failWith(ErrorCode::cannotRead, source.fileName(), source.errorString().toStdString());
        }
        if (target.write(bytes) != bytes.size()) {
            const bool isFull = target.error() == QFileDevice::ResourceError;
            failWith(isFull ? ErrorCode::diskFull : ErrorCode::cannotWrite, target.fileName(),
                     target.errorString().toStdString());
        }
    }
    if (::fsync(target.handle()) != 0) {
        failWith(errno == ENOSPC ? ErrorCode::diskFull : ErrorCode::cannotWrite, target.fileName(),
                 qt_error_string().toStdString());
    }
}

/// What a file holds, as far as restoring asks.
struct Holding {
    std::vector<Complaint> remarks = {}; ///< what is wrong with it, but no reason against it
    int schema = 0;
    std::int64_t changes = 0;
    std::string chain;
};

Holding holdingOf(const Connection& connection)
{
    Holding holding;
    holding.schema = schemaVersion(connection);
    if (numberFrom(connection, dialect::readApplicationId) != dialect::applicationId ||
        holding.schema < 1) {
        throw Failure({.code = ErrorCode::notAStore, .subject = {}, .detail = {}});
    }
    constexpr int firstWithAnEnd = 2;
    if (holding.schema >= firstWithAnEnd) {
        const ChainEnd end = chainEnd(connection);
        holding.changes = end.last;
        holding.chain = end.chain;
    } else {
        holding.changes =
            numberFrom(connection, "SELECT ifnull(max(id), 0) FROM change_record").value_or(0);
    }
    return holding;
}

/// Reads and checks an unsealed backup; nothing else has it open.
Holding requireWhole(const QString& file, const QString& backup)
{
    try {
        const Connection connection(file, Access::frozen, usualPatience);
        Holding holding = holdingOf(connection);
        const int newest = newestVersion(builtInSteps());
        if (holding.schema > newest) {
            throw Failure({.code = ErrorCode::newerStore,
                           .subject = backup.toStdString(),
                           .detail = {},
                           .field = Field::none,
                           .figures = {countOf(holding.schema), countOf(newest)}});
        }
        Statement integrity(connection, dialect::checkIntegrity);
        while (integrity.next()) {
            if (const std::string fault = integrity.takeText(); fault != "ok") {
                failWith(ErrorCode::backupDamaged, backup, fault);
            }
        }
        if (holding.schema == newest) {
            Reading reading(const_cast<Connection&>(connection));
            for (const Complaint& complaint : verify(reading)) {
                // Dates that contradict each other were entered so; the store had them too.
                if (complaint.fault != Fault::date) {
                    failWith(ErrorCode::backupDamaged, backup,
                             complaint.place + " " + complaint.detail);
                }
                holding.remarks.push_back(complaint);
            }
        }
        return holding;
    } catch (const SqlError& error) {
        if (dialect::troubleOf(error.code()) == dialect::Trouble::locked) {
            throw; // says nothing of the backup
        }
        failWith(ErrorCode::backupDamaged, backup, error.what());
    } catch (const Failure& failure) {
        if (failure.error().code == ErrorCode::notAStore) {
            failWith(ErrorCode::backupDamaged, backup, "it is no practice file");
        }
        if (failure.error().code == ErrorCode::storeDamaged) {
            failWith(ErrorCode::backupDamaged, backup, failure.error().detail);
        }
        throw;
    }
}

/// True when everything in the store is in the backup too.
bool isContained(const QString& store, const QString& backup, const Holding& held)
{
    try {
        // A reader of a log leaves files beside the store; where there is no log, none is needed.
        const bool hasLog = QFileInfo::exists(store + QLatin1String(dialect::writeAheadLogEnding));
        const Connection present(store, hasLog ? Access::readOnly : Access::frozen, usualPatience);
        const Holding holding = holdingOf(present);
        if (holding.changes > held.changes || holding.schema > held.schema) {
            return false;
        }
        if (holding.changes == 0 || holding.chain.empty()) {
            return holding.changes == 0;
        }
        const Connection other(backup, Access::frozen, usualPatience);
        Statement row(other, "SELECT chain FROM change_record WHERE id = ?");
        row.bind({holding.changes});
        return row.next() && row.takeText() == holding.chain;
    } catch (const SqlError&) {
        return false; // can't be read: only a person can say that it may go
    } catch (const Failure&) {
        return false;
    }
}

/// Carries the store's log over into it and makes sure that nobody has it open. A store that is too
/// damaged for that keeps its log beside it.
void settle(const QString& store)
{
    try {
        const Connection connection(store, Access::readWrite, usualPatience);
        Statement mode(connection, dialect::keepNoLog);
        if (mode.next() && mode.takeText() == dialect::writeAheadLogKept) {
            failWith(ErrorCode::locked, store);
        }
    } catch (const SqlError& error) {
        if (dialect::troubleOf(error.code()) == dialect::Trouble::locked) {
            failWith(ErrorCode::locked, store);
        }
    }
}

bool areOneFile(const QString& one, const QString& other)
{
    struct stat first = {};
    struct stat second = {};
    return ::stat(QFile::encodeName(one).constData(), &first) == 0 &&
           ::stat(QFile::encodeName(other).constData(), &second) == 0 &&
           first.st_dev == second.st_dev && first.st_ino == second.st_ino;
}

/// The store under another name, its log with it.
class Aside
{
public:
    Aside(const QString& store, Moment moment)
        : m_store(store)
    {
        const QString when = momentInFileName(moment);
        m_path = store + QStringLiteral(".before-restore.") + when;
        for (int attempt = 2; QFileInfo::exists(m_path); ++attempt) {
            m_path = store + QStringLiteral(".before-restore.%1-%2").arg(when).arg(attempt);
        }
    }
    /// A store that nothing replaced loses its second name again: programs that have it open under
    /// two names each write beside a log of their own. One whose log lies here keeps it.
    ~Aside()
    {
        if (!m_hasLog && areOneFile(m_store, m_path)) {
            QFile::remove(m_path);
        }
    }
    Aside(const Aside&) = delete;
    Aside& operator=(const Aside&) = delete;

    const QString& path() const { return m_path; }
    void put()
    {
        // A second name costs nothing and is there at once; where there is none, a copy that is
        // safe on the disk before the store is replaced.
        if (::link(QFile::encodeName(m_store).constData(), QFile::encodeName(m_path).constData()) !=
            0) {
            putCopy();
        }
        QFile::setPermissions(m_path, ownerOnly);
        syncFolderOf(m_path);
        for (const char* ending : {dialect::writeAheadLogEnding, dialect::logIndexEnding}) {
            const QString part = m_store + QLatin1String(ending);
            if (!QFileInfo::exists(part)) {
                continue;
            }
            if (!QFile::rename(part, m_path + QLatin1String(ending))) {
                failWith(ErrorCode::cannotWrite, part, "it can’t be moved aside");
            }
            m_hasLog = true;
        }
    }

private:
    void putCopy() const
    {
        QFile source(m_store);
        if (!source.open(QIODevice::ReadOnly)) {
            failWith(ErrorCode::cannotRead, m_store, source.errorString().toStdString());
        }
        PassingFile copy(m_path);
        QFile target(copy.path());
        copyBytes(source, target);
        copy.takePlace(m_path);
    }

    QString m_store;
    QString m_path;
    bool m_hasLog = false;
};

} // namespace

void copyStore(const QString& store, const QString& target)
{
    const NoClock clock;
    const auto source = caught(
        [&] { return openFile(store, Opening::readOnly, clock, usualPatience, builtInSteps()); });
    if (!source) {
        Error error = source.error();
        error.subject = store.toStdString();
        throw Failure(error);
    }
    copyDatabase(*source->connection, target);
}

Result<void> writeBackup(const QString& store, const QString& out,
                         const std::optional<Passphrase>& passphrase)
{
    return caught([&] {
        requireFree(out);
        if (!passphrase) {
            PassingFile copy(out);
            copyStore(store, copy.path());
            copy.takePlace(out);
            return;
        }
        // What can be read without the passphrase stays where the store is, never on the medium.
        PassingFile copy(QFileInfo(store).absoluteFilePath());
        copyStore(store, copy.path());
        PassingFile sealed(out);
        sealFile(copy.path(), sealed.path(), passphrase->words, passphrase->cost);
        sealed.takePlace(out);
    });
}

Result<Restored> restoreBackup(const QString& backup, const QString& store,
                               const std::optional<Passphrase>& passphrase, bool force,
                               const Clock& clock)
{
    return caught([&] {
        if (!QFileInfo::exists(backup)) {
            failWith(ErrorCode::cannotRead, backup, "there is no such file");
        }
        PassingFile incoming(QFileInfo(store).absoluteFilePath());
        if (isSealed(backup)) {
            if (!passphrase) {
                failWith(ErrorCode::passphraseNeeded, backup);
            }
            unsealFile(backup, incoming.path(), passphrase->words);
        } else {
            QFile source(backup);
            QFile target(incoming.path());
            if (!source.open(QIODevice::ReadOnly)) {
                failWith(ErrorCode::cannotRead, backup, source.errorString().toStdString());
            }
            copyBytes(source, target);
        }
        const Holding held = requireWhole(incoming.path(), backup);
        Restored restored{.copyAside = {}, .remarks = held.remarks};
        std::optional<Aside> aside;
        if (QFileInfo::exists(store)) {
            if (!force && !isContained(store, incoming.path(), held)) {
                failWith(ErrorCode::newerThanBackup, store);
            }
            settle(store);
            aside.emplace(store, clock.now());
            aside->put();
            restored.copyAside = aside->path();
        }
        incoming.replace(store);
        return restored;
    });
}

} // namespace quadrille::db
