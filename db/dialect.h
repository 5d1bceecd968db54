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
/// Carries the log over into the file and keeps none; answers with the mode. Fails as locked while
/// another program has the file open.
inline constexpr std::string_view keepNoLog = "PRAGMA journal_mode = DELETE";
inline constexpr std::string_view writeAheadLogKept = "wal";
/// The log lies beside the file, under the file's name with this behind it, while it is in use.
inline constexpr const char* writeAheadLogEnding = "-wal";
/// The log's index, in use as long as the log.
inline constexpr const char* logIndexEnding = "-shm";
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

/// Bytes of deleted rows are overwritten from now on.
inline constexpr std::string_view overwriteDeleted = "PRAGMA secure_delete = ON";
/// Writes the whole file anew, without what was deleted.
inline constexpr std::string_view writeAnew = "VACUUM";
/// Carries the log over into the file and cuts it to nothing; answers 0 when that was possible.
inline constexpr std::string_view emptyLog = "PRAGMA wal_checkpoint(TRUNCATE)";
/// One row "ok", or one for each fault; looks at pages, types, constraints and indexes.
inline constexpr std::string_view checkIntegrity = "PRAGMA integrity_check(50)";

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
    diskFault,     ///< reading or writing fails
    duplicate,     ///< a unique index
    rule,          ///< a trigger; the message is the rule
    range,         ///< a CHECK; the message ends with its name
    missingRecord, ///< a foreign key
    other,
};
Trouble troubleOf(int code);

} // namespace dialect
} // namespace quadrille::db
