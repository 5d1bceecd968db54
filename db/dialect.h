// SPDX-License-Identifier: GPL-3.0-or-later
// Everything in which SQLite differs from PostgreSQL, apart from the steps of the schema. The rest
// of the layer keeps to what both understand (INSERT … RETURNING, ON CONFLICT, window functions).
#pragma once

#include <QString>

#include <chrono>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille::db
{

/// How a file is opened.
enum class Access {
    readWrite, ///< made when it is not there
    readOnly,
    frozen, ///< read-only, and nobody else writes: the only way into a folder that takes no files
};

namespace dialect
{

/// Marks a file as ours ("Qudr"), in the header that each SQLite file has for this.
inline constexpr std::int64_t applicationId = 0x51756472;

QString driver();
/// What the driver takes for the file's name.
QString databaseName(const QString& file, Access access);
QString connectOptions(Access access, std::chrono::milliseconds patience);

/// What each connection that writes is told first; none of it changes what a file says.
std::vector<std::string> settingsOfConnection();
/// Makes the file keep a write-ahead log: readers never wait for a writer. Answers with the mode.
inline constexpr std::string_view keepWriteAheadLog = "PRAGMA journal_mode = WAL";
inline constexpr std::string_view writeAheadLogKept = "wal";
/// The log lies beside the file, under the file's name with this behind it, while it is in use.
inline constexpr const char* writeAheadLogEnding = "-wal";
/// The same for what undoes a change that was cut off while the file was being made.
inline constexpr const char* rollbackJournalEnding = "-journal";
/// One page of the smallest kind, in bytes; a shorter file is no database.
inline constexpr std::int64_t leastFileSize = 512;

inline constexpr std::string_view beginReading = "BEGIN";
/// Takes the right to write at once, so that two writers never wait for each other.
inline constexpr std::string_view beginWriting = "BEGIN IMMEDIATE";
inline constexpr std::string_view commit = "COMMIT";
inline constexpr std::string_view rollBack = "ROLLBACK";

inline constexpr std::string_view readApplicationId = "PRAGMA application_id";
inline constexpr std::string_view readSchemaVersion = "PRAGMA user_version";
/// How many tables and the like there are; 0 for a file just made.
inline constexpr std::string_view countTables = "SELECT count(*) FROM sqlite_schema";
std::string markAsOurs();
std::string setSchemaVersion(int version);

/// Steps of the schema may rebuild a table that others point to.
inline constexpr std::string_view suspendForeignKeys = "PRAGMA foreign_keys = OFF";
inline constexpr std::string_view enforceForeignKeys = "PRAGMA foreign_keys = ON";
/// One row for each broken reference.
inline constexpr std::string_view findBrokenReferences = "PRAGMA foreign_key_check";
/// Writes a whole, consistent copy into the file that is bound.
inline constexpr std::string_view copyInto = "VACUUM INTO ?";

/// A condition: the column holds digits and nothing else, few enough for a whole number.
std::string isWholeNumber(std::string_view column);

/// What the database complains of, read from its extended code.
enum class Trouble {
    locked,
    full,
    readOnly,
    cannotOpen,
    notADatabase,
    damaged,
    duplicate,     ///< a unique index
    rule,          ///< a trigger; the message is the rule
    range,         ///< a CHECK; the message ends with its name
    missingRecord, ///< a foreign key
    other,
};
Trouble troubleOf(int code);

} // namespace dialect
} // namespace quadrille::db
