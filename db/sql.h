// SPDX-License-Identifier: GPL-3.0-or-later
// The thin layer over the database driver, and the only place that knows it.
#pragma once

#include "db/dialect.h"

#include <QString>

#include <chrono>
#include <cstdint>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <unordered_map>
#include <variant>
#include <vector>

class QSqlQuery;

namespace quadrille::db
{

/// What a column holds: nothing, a whole number or text. The store has no other kinds.
using Value = std::variant<std::monostate, std::int64_t, std::string>;

/// What the database refused, with its extended code and the statement (without the values bound
/// to it: those are somebody's record).
class SqlError : public std::runtime_error
{
public:
    SqlError(int code, const std::string& message, std::string statement);
    int code() const { return m_code; }
    const std::string& statement() const { return m_statement; }

private:
    int m_code;
    std::string m_statement;
};

/// One open file. Belongs to one thread; throws SqlError when it can't be opened.
class Connection
{
public:
    /// `patience`: how long a statement waits for another program that holds the file.
    Connection(const QString& file, Access access, std::chrono::milliseconds patience);
    ~Connection();
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;

    /// The driver's name for this connection; unlike any other.
    const QString& name() const { return m_name; }
    const QString& file() const { return m_file; }

private:
    friend class Statement;
    /// A statement that was prepared before and is idle, or nothing.
    std::unique_ptr<QSqlQuery> take(const std::string& sql) const;
    /// `ended`: it has given its last row, so that the driver has let go of the file already.
    void giveBack(const std::string& sql, std::unique_ptr<QSqlQuery> query, bool ended) const;

    QString m_name;
    QString m_file;
    mutable std::unordered_map<std::string, std::unique_ptr<QSqlQuery>> m_idle;
};

/// One statement, prepared; text with a second statement in it is refused. Every member throws
/// SqlError.
///
///     Statement people(connection, "SELECT id, name FROM patient WHERE archived = ?");
///     people.bind({0});
///     while (people.next()) {
///         const std::int64_t id = people.takeInteger();
///         const std::string name = people.takeText();
///     }
class Statement
{
public:
    Statement(const Connection& connection, std::string_view sql);
    ~Statement();
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;

    /// One value for each "?", from the left. Once more after it has run: with other values.
    Statement& bind(const std::vector<Value>& values);
    /// Runs it to its end and drops what it answers.
    void run();
    /// The next row; false after the last.
    bool next();

    // The columns of the row, one after another, in the order of the select list. A value that is
    // missing where none may be is an Error storeDamaged (thrown as Failure).
    std::int64_t takeInteger();
    std::optional<std::int64_t> takeOptionalInteger();
    std::string takeText();
    std::optional<std::string> takeOptionalText();
    /// Whatever the column holds.
    Value takeValue();
    /// The key of the row that was inserted; once it has run. Only after a plain INSERT into a
    /// table that has a key: one that ended in ON CONFLICT may have added no row, and a table
    /// WITHOUT ROWID has none to tell; both give the key of an earlier row.
    std::int64_t insertedKey() const;
    /// How many columns a row has; after the first next().
    int columnCount() const;

private:
    void execute();
    [[noreturn]] void fail() const;

    const Connection& m_connection;
    std::unique_ptr<QSqlQuery> m_query;
    std::string m_sql;
    bool m_bound = false; ///< values wait for a run
    bool m_executed = false;
    bool m_ended = false; ///< has given its last row
    int m_column = 0;
};

/// Runs one statement that takes no values.
void run(const Connection& connection, std::string_view sql);
/// The one number that a statement answers with; nothing when it has no row.
std::optional<std::int64_t> numberFrom(const Connection& connection, std::string_view sql,
                                       const std::vector<Value>& values = {});

/// Everything between its beginning and commit() is kept together, or not at all.
class Transaction
{
public:
    /// `begin`: dialect::beginReading or dialect::beginWriting.
    Transaction(const Connection& connection, std::string_view begin);
    /// Rolls back unless committed.
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;

    void commit();

private:
    const Connection& m_connection;
    bool m_open = true;
};

} // namespace quadrille::db
