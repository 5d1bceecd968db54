// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/dialect.h"

#include <QUrl>

namespace quadrille::db::dialect
{

namespace
{

// Result codes of SQLite: sqlite.org, "Result and Error Codes". The low byte is the primary code.
constexpr int busy = 5;
constexpr int tableLocked = 6;
constexpr int readOnlyCode = 8;
constexpr int ioError = 10;
constexpr int corrupt = 11;
constexpr int fullCode = 13;
constexpr int cannotOpenCode = 14;
constexpr int notADatabaseCode = 26;
constexpr int checkFailed = 275;
constexpr int foreignKeyFailed = 787;
constexpr int primaryKeyFailed = 1555;
constexpr int triggerRaised = 1811;
constexpr int uniqueFailed = 2067;
constexpr int rowIdFailed = 2579;

Trouble troubleOfPrimary(int code)
{
    switch (code) {
    case busy:
    case tableLocked:
        return Trouble::locked;
    case readOnlyCode:
        return Trouble::readOnly;
    case ioError:
        return Trouble::diskFault;
    case corrupt:
        return Trouble::damaged;
    case fullCode:
        return Trouble::full;
    case cannotOpenCode:
        return Trouble::cannotOpen;
    case notADatabaseCode:
        return Trouble::notADatabase;
    default:
        return Trouble::other;
    }
}

} // namespace

QString driver()
{
    return QStringLiteral("QSQLITE");
}

QString databaseName(const QString& file, Access access)
{
    if (access != Access::frozen) {
        return file;
    }
    return QString::fromLatin1(QUrl::fromLocalFile(file).toEncoded()) +
           QStringLiteral("?immutable=1");
}

QString connectOptions(Access access, std::chrono::milliseconds patience)
{
    QString options = QStringLiteral("QSQLITE_BUSY_TIMEOUT=%1").arg(patience.count());
    if (access != Access::readWrite) {
        options += QStringLiteral(";QSQLITE_OPEN_READONLY");
    }
    if (access == Access::frozen) {
        options += QStringLiteral(";QSQLITE_OPEN_URI");
    }
    return options;
}

std::vector<std::string> settingsOfConnection()
{
    // FULL: what was saved is on the disk before saving returns, also when the power fails.
    // MEMORY: what a query sorts is nobody's business on another disk.
    return {std::string(enforceForeignKeys), "PRAGMA synchronous = FULL",
            "PRAGMA temp_store = MEMORY"};
}

std::string markAsOurs()
{
    return "PRAGMA application_id = " + std::to_string(applicationId);
}

std::string setSchemaVersion(int version)
{
    return "PRAGMA user_version = " + std::to_string(version);
}

std::string isWholeNumber(std::string_view column)
{
    const std::string name(column);
    return name + " NOT GLOB '*[^0-9]*' AND length(" + name + ") BETWEEN 1 AND 15";
}

Trouble troubleOf(int code)
{
    switch (code) {
    case checkFailed:
        return Trouble::range;
    case foreignKeyFailed:
        return Trouble::missingRecord;
    case primaryKeyFailed:
    case uniqueFailed:
    case rowIdFailed:
        return Trouble::duplicate;
    case triggerRaised:
        return Trouble::rule;
    default:
        return troubleOfPrimary(code & 0xFF);
    }
}

} // namespace quadrille::db::dialect
