// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/store_care.h"

#include <QFile>
#include <QSqlDatabase>
#include <QSqlDriver>
#include <QVariant>

#include <memory>
#include <sqlite3.h>

namespace quadrille::db
{

namespace
{

struct CloseDatabase {
    void operator()(sqlite3* database) const { sqlite3_close(database); }
};
using Database = std::unique_ptr<sqlite3, CloseDatabase>;

struct EndBackup {
    void operator()(sqlite3_backup* backup) const { sqlite3_backup_finish(backup); }
};

constexpr const char* statementName = "backup";

[[noreturn]] void fail(sqlite3* database)
{
    throw SqlError(sqlite3_extended_errcode(database), sqlite3_errmsg(database), statementName);
}

/// The driver's own handle; the driver and this file use the same library of the system.
sqlite3* handleOf(const Connection& connection)
{
    const QVariant handle = QSqlDatabase::database(connection.name(), false).driver()->handle();
    auto* database = handle.isValid() && qstrcmp(handle.typeName(), "sqlite3*") == 0
                         ? *static_cast<sqlite3* const*>(handle.constData())
                         : nullptr;
    if (database == nullptr) {
        throw SqlError(SQLITE_MISUSE, "the driver gives no handle", statementName);
    }
    return database;
}

Database openTarget(const QString& file)
{
    sqlite3* opened = nullptr;
    const int code = sqlite3_open_v2(QFile::encodeName(file).constData(), &opened,
                                     SQLITE_OPEN_READWRITE, nullptr);
    Database target(opened);
    if (code != SQLITE_OK) {
        throw SqlError(code, sqlite3_errstr(code), statementName);
    }
    sqlite3_extended_result_codes(target.get(), 1);
    return target;
}

} // namespace

void copyDatabase(const Connection& source, const QString& target)
{
    constexpr int everyPage = -1;
    sqlite3* from = handleOf(source);
    const Database to = openTarget(target);
    {
        const std::unique_ptr<sqlite3_backup, EndBackup> backup(
            sqlite3_backup_init(to.get(), "main", from, "main"));
        if (!backup) {
            fail(to.get());
        }
        const int code = sqlite3_backup_step(backup.get(), everyPage);
        if (code != SQLITE_DONE) {
            throw SqlError(code, sqlite3_errstr(code), statementName);
        }
    }
    // The copy says that it keeps a log, as its source does; without one it is whole in one file.
    if (sqlite3_exec(to.get(), "PRAGMA journal_mode = DELETE", nullptr, nullptr, nullptr) !=
        SQLITE_OK) {
        fail(to.get());
    }
}

} // namespace quadrille::db
