// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sql.h"

#include "db/failure.h"

#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>
#include <QSqlRecord>
#include <QUuid>
#include <QVariant>

namespace quadrille::db
{

namespace
{

QVariant variantOf(const Value& value)
{
    if (const auto* number = std::get_if<std::int64_t>(&value)) {
        return {static_cast<qlonglong>(*number)};
    }
    if (const auto* text = std::get_if<std::string>(&value)) {
        return QString::fromStdString(*text);
    }
    return QVariant(QMetaType::fromType<QString>());
}

SqlError errorFrom(const QSqlError& error, const std::string& statement)
{
    const QString text = error.databaseText().isEmpty() ? error.driverText() : error.databaseText();
    return {error.nativeErrorCode().toInt(), text.toStdString(), statement};
}

[[noreturn]] void failWithout(const std::string& statement)
{
    throw Failure({.code = ErrorCode::storeDamaged,
                   .subject = {},
                   .detail = "a value is missing in: " + statement});
}

} // namespace

SqlError::SqlError(int code, const std::string& message, std::string statement)
    : std::runtime_error(message)
    , m_code(code)
    , m_statement(std::move(statement))
{
}

Connection::Connection(const QString& file, Access access, std::chrono::milliseconds patience)
    : m_name(QUuid::createUuid().toString())
    , m_file(file)
{
    std::optional<SqlError> error;
    {
        QSqlDatabase database = QSqlDatabase::addDatabase(dialect::driver(), m_name);
        database.setDatabaseName(dialect::databaseName(file, access));
        database.setConnectOptions(dialect::connectOptions(access, patience));
        if (!database.open()) {
            error = errorFrom(database.lastError(), "open");
        }
    }
    if (error) {
        QSqlDatabase::removeDatabase(m_name); // a constructor that throws runs no destructor
        throw SqlError(*error);
    }
}

Connection::~Connection()
{
    m_idle.clear(); // before the driver goes
    QSqlDatabase::database(m_name, false).close();
    QSqlDatabase::removeDatabase(m_name);
}

std::unique_ptr<QSqlQuery> Connection::take(const std::string& sql) const
{
    const auto idle = m_idle.find(sql);
    if (idle == m_idle.end()) {
        return nullptr;
    }
    auto query = std::move(idle->second);
    m_idle.erase(idle);
    return query;
}

void Connection::giveBack(const std::string& sql, std::unique_ptr<QSqlQuery> query,
                          bool ended) const
{
    constexpr std::size_t mostIdle = 200;
    if (!ended) {
        query->finish();
    }
    const bool comesAgain = sql.starts_with("SELECT") || sql.starts_with("INSERT") ||
                            sql.starts_with("UPDATE") || sql.starts_with("DELETE");
    if (comesAgain && m_idle.size() < mostIdle) { // the steps of a schema never do
        m_idle.try_emplace(sql, std::move(query));
    }
}

Statement::Statement(const Connection& connection, std::string_view sql)
    : m_connection(connection)
    , m_sql(sql)
{
    m_query = connection.take(m_sql);
    if (m_query) {
        return;
    }
    m_query = std::make_unique<QSqlQuery>(QSqlDatabase::database(connection.name(), false));
    m_query->setForwardOnly(true);
    if (!m_query->prepare(QString::fromStdString(m_sql))) {
        fail();
    }
}

Statement::~Statement()
{
    const bool fresh = !m_bound && !m_query->lastError().isValid();
    if (fresh && m_executed) {
        m_connection.giveBack(m_sql, std::move(m_query), m_ended);
    }
}

Statement& Statement::bind(const std::vector<Value>& values)
{
    m_executed = false;
    m_bound = true;
    for (const Value& value : values) {
        m_query->addBindValue(variantOf(value));
    }
    return *this;
}

void Statement::run()
{
    while (next()) {
    }
}

bool Statement::next()
{
    if (!m_executed) {
        execute();
    }
    m_column = 0;
    if (m_query->next()) {
        return true;
    }
    if (m_query->lastError().isValid()) {
        fail();
    }
    m_ended = true;
    return false;
}

std::int64_t Statement::takeInteger()
{
    const auto number = takeOptionalInteger();
    if (!number) {
        failWithout(m_sql);
    }
    return *number;
}

std::optional<std::int64_t> Statement::takeOptionalInteger()
{
    const QVariant value = m_query->value(m_column++);
    return value.isNull() ? std::nullopt : std::optional<std::int64_t>(value.toLongLong());
}

std::string Statement::takeText()
{
    auto text = takeOptionalText();
    if (!text) {
        failWithout(m_sql);
    }
    return std::move(*text);
}

std::optional<std::string> Statement::takeOptionalText()
{
    const QVariant value = m_query->value(m_column++);
    return value.isNull() ? std::nullopt : std::optional(value.toString().toStdString());
}

Value Statement::takeValue()
{
    const QVariant value = m_query->value(m_column++);
    if (value.isNull()) {
        return {};
    }
    if (value.typeId() == QMetaType::LongLong || value.typeId() == QMetaType::Int) {
        return static_cast<std::int64_t>(value.toLongLong());
    }
    return value.toString().toStdString();
}

std::int64_t Statement::insertedKey() const
{
    return m_query->lastInsertId().toLongLong();
}

int Statement::columnCount() const
{
    return m_query->record().count();
}

void Statement::execute()
{
    m_executed = true;
    m_ended = false;
    m_bound = false;
    if (!m_query->exec()) {
        fail();
    }
}

void Statement::fail() const
{
    throw errorFrom(m_query->lastError(), m_sql);
}

void run(const Connection& connection, std::string_view sql)
{
    Statement(connection, sql).run();
}

std::optional<std::int64_t> numberFrom(const Connection& connection, std::string_view sql,
                                       const std::vector<Value>& values)
{
    Statement statement(connection, sql);
    statement.bind(values);
    return statement.next() ? statement.takeOptionalInteger() : std::nullopt;
}

Transaction::Transaction(const Connection& connection, std::string_view begin)
    : m_connection(connection)
{
    run(connection, begin);
}

Transaction::~Transaction()
{
    if (!m_open) {
        return;
    }
    try {
        run(m_connection, dialect::rollBack);
    } catch (const SqlError&) {
        // The database has rolled back by itself (a full disk does that); why is already on its
        // way to the caller.
    }
}

void Transaction::commit()
{
    run(m_connection, dialect::commit);
    m_open = false;
}

} // namespace quadrille::db
