// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/opening.h"

#include "db/codec.h"
#include "db/failure.h"
#include "db/new_file.h"

#include <QFile>
#include <QFileInfo>

namespace quadrille::db
{

namespace
{

[[noreturn]] void failWith(ErrorCode code, const std::string& detail = {})
{
    throw Failure({.code = code, .subject = {}, .detail = detail});
}

bool folderTakesFiles(const QString& file)
{
    return QFileInfo(QFileInfo(file).absolutePath()).isWritable();
}

bool liesBeside(const QString& file, const char* ending)
{
    return QFileInfo::exists(file + QString::fromLatin1(ending));
}

enum class Content { empty, older, current };

/// Tells what a file holds, or refuses it.
Content contentOf(const Connection& connection, int newest)
{
    const auto application = numberFrom(connection, dialect::readApplicationId);
    const int version = schemaVersion(connection);
    if (application == 0 && version == 0 &&
        numberFrom(connection, dialect::countTables) == std::int64_t(0)) {
        return Content::empty;
    }
    if (application != dialect::applicationId || version < 1) {
        failWith(ErrorCode::notAStore);
    }
    if (version > newest) {
        throw Failure({.code = ErrorCode::newerStore,
                       .subject = {},
                       .detail = {},
                       .field = Field::none,
                       .figures = {countOf(version), countOf(newest)}});
    }
    return version < newest ? Content::older : Content::current;
}

/// Refuses a foreign or newer file without touching it or leaving anything beside it. It is never
/// read by other means: closing a file that is open elsewhere in this process drops the database's
/// locks on it.
void refuseUnlessOurs(const QString& file, std::chrono::milliseconds patience, int newest)
{
    try {
        const Connection connection(file, Access::frozen, patience);
        contentOf(connection, newest);
    } catch (const SqlError& error) {
        // What another program has in its log, or left there, is not seen from here, so that the
        // file may look cut off; the connection that follows sees all of it and tells.
        const bool hasLog = liesBeside(file, dialect::writeAheadLogEnding) ||
                            liesBeside(file, dialect::rollbackJournalEnding);
        if (!hasLog || dialect::troubleOf(error.code()) != dialect::Trouble::damaged) {
            throw;
        }
    }
}

/// Writers share a piece of memory beside the file, which no two machines can.
void refuseOnNetworkShare(const QString& file, const FileSystemOf& fileSystemOf)
{
    const auto share = networkShareName(fileSystemOf(QFileInfo(file).absolutePath()));
    if (share) {
        failWith(ErrorCode::onNetworkShare, *share);
    }
}

/// The database makes the log before its index and removes it after: an index that stands alone
/// means that somebody took the log away, with what was saved last.
void refuseWithoutItsLog(const QString& file)
{
    const auto indexStands = [&] { return liesBeside(file, dialect::logIndexEnding); };
    if (indexStands() && !liesBeside(file, dialect::writeAheadLogEnding) && indexStands()) {
        failWith(ErrorCode::logMissing);
    }
}

/// A name beside the file that says which schema and when.
QString nameOfCopy(const QString& file, int version, Moment moment, int attempt)
{
    const QString name =
        QStringLiteral("%1.schema-%2.%3").arg(file).arg(version).arg(momentInFileName(moment));
    return attempt == 1 ? name : name + QStringLiteral("-%1").arg(attempt);
}

/// Copies the whole file aside and tells where to.
QString copyAside(const Connection& connection, Moment moment)
{
    constexpr int mostAttempts = 100;
    const int version = schemaVersion(connection);
    std::string reason;
    for (int attempt = 1; attempt <= mostAttempts; ++attempt) {
        QString name = nameOfCopy(connection.file(), version, moment, attempt);
        NewFile copy(name);
        if (copy.isMade()) {
            Statement(connection, dialect::copyInto).bind({name.toStdString()}).run();
            copy.keep();
            return name;
        }
        reason = copy.reason();
        if (!QFileInfo::exists(name)) {
            break; // not a name taken by an earlier copy: the next name would fare no better
        }
    }
    failWith(ErrorCode::migrationFailed, reason);
}

void bringForward(const Connection& connection, Content content, const Clock& clock,
                  const std::vector<MigrationStep>& steps)
{
    if (content == Content::empty) {
        applyMissing(connection, steps);
        return;
    }
    const QString copy = copyAside(connection, clock.now());
    try {
        applyMissing(connection, steps);
    } catch (const Failure& failure) {
        Error error = failure.error();
        error.detail += "; " + copy.toStdString();
        throw Failure(error);
    }
}

void keepWriteAheadLog(const Connection& connection)
{
    Statement statement(connection, dialect::keepWriteAheadLog);
    if (!statement.next() || statement.takeText() != dialect::writeAheadLogKept) {
        failWith(ErrorCode::cannotOpen, "no write-ahead log can be kept there");
    }
}

OpenedFile openToWrite(const QString& file, Opening opening, const Clock& clock,
                       std::chrono::milliseconds patience, const std::vector<MigrationStep>& steps)
{
    auto connection = std::make_unique<Connection>(file, Access::readWrite, patience);
    for (const std::string& setting : dialect::settingsOfConnection()) {
        run(*connection, setting);
    }
    const Content content = contentOf(*connection, newestVersion(steps));
    if (content == Content::empty && opening != Opening::createIfMissing) {
        failWith(ErrorCode::notAStore);
    }
    if (content != Content::current) {
        bringForward(*connection, content, clock, steps);
    }
    keepWriteAheadLog(*connection);
    return {std::move(connection), true};
}

OpenedFile openToRead(const QString& file, std::chrono::milliseconds patience, int newest)
{
    // A reader of a write-ahead log needs two files beside the store. Where the folder takes none
    // and nobody has made them, nobody writes, and the file can be read as it lies there.
    const bool readerFindsLog =
        liesBeside(file, dialect::writeAheadLogEnding) || folderTakesFiles(file);
    const Access access = readerFindsLog ? Access::readOnly : Access::frozen;
    auto connection = std::make_unique<Connection>(file, access, patience);
    switch (contentOf(*connection, newest)) {
    case Content::empty:
        failWith(ErrorCode::notAStore);
    case Content::older:
        failWith(ErrorCode::readOnly, "the file is from an older program and has to be changed");
    case Content::current:
        break;
    }
    return {std::move(connection), false};
}

} // namespace

OpenedFile openFile(const QString& file, Opening opening, const Clock& clock,
                    std::chrono::milliseconds patience, const std::vector<MigrationStep>& steps,
                    const FileSystemOf& fileSystemOf)
{
    const QString path = QFileInfo(file).absoluteFilePath();
    const int newest = newestVersion(steps);
    if (QFileInfo(path).isDir()) {
        failWith(ErrorCode::cannotOpen, "it is a folder");
    }
    if (!QFileInfo::exists(path)) {
        if (opening != Opening::createIfMissing) {
            failWith(ErrorCode::cannotOpen, "there is no such file");
        }
        refuseOnNetworkShare(path, fileSystemOf);
        NewFile made(path);
        if (made.isMade()) {
            OpenedFile opened = openToWrite(path, opening, clock, patience, steps);
            made.keep();
            return opened;
        }
        if (!QFileInfo::exists(path)) {
            failWith(ErrorCode::cannotWrite, made.reason());
        }
        // Another program made it in the meantime.
    }
    const QFileInfo info(path);
    if (info.size() == 0) {
        if (opening != Opening::createIfMissing) {
            failWith(ErrorCode::notAStore);
        }
    } else if (info.size() < dialect::leastFileSize) {
        failWith(ErrorCode::notAStore); // the database would take it for an empty one
    } else {
        refuseWithoutItsLog(path);
        refuseUnlessOurs(path, patience, newest);
    }
    if (opening == Opening::readOnly || !info.isWritable() || !folderTakesFiles(path)) {
        return openToRead(path, patience, newest);
    }
    refuseOnNetworkShare(path, fileSystemOf);
    return openToWrite(path, opening, clock, patience, steps);
}

} // namespace quadrille::db
