// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/migrations.h"

#include "db/failure.h"

namespace quadrille::db
{

namespace
{

/// Foreign keys can't be switched inside a transaction; they are on again whatever happens.
class ForeignKeysSuspended
{
public:
    explicit ForeignKeysSuspended(const Connection& connection)
        : m_connection(connection)
    {
        run(m_connection, dialect::suspendForeignKeys);
    }
    ~ForeignKeysSuspended()
    {
        try {
            run(m_connection, dialect::enforceForeignKeys);
        } catch (const SqlError&) {
            // Only a connection that is broken already refuses; it is closed with the first error.
        }
    }
    ForeignKeysSuspended(const ForeignKeysSuspended&) = delete;
    ForeignKeysSuspended& operator=(const ForeignKeysSuspended&) = delete;

private:
    const Connection& m_connection;
};

[[noreturn]] void failAt(const std::string& step, const std::string& reason)
{
    throw Failure(
        {.code = ErrorCode::migrationFailed, .subject = {}, .detail = step + ": " + reason});
}

/// A step that can't be applied is migrationFailed, unless the reason lies outside it.
bool isOutsideTheStep(const SqlError& error)
{
    switch (dialect::troubleOf(error.code())) {
    case dialect::Trouble::full:
    case dialect::Trouble::locked:
    case dialect::Trouble::readOnly:
        return true;
    default:
        return false;
    }
}

void apply(const Connection& connection, const MigrationStep& step)
{
    try {
        for (const std::string& statement : statementsOf(step)) {
            run(connection, statement);
        }
        if (step.completion) {
            step.completion(connection);
        }
    } catch (const SqlError& error) {
        if (isOutsideTheStep(error)) {
            throw;
        }
        failAt(step.name, error.what());
    }
}

} // namespace

std::vector<std::string> statementsOf(const MigrationStep& step)
{
    std::vector<std::string> statements;
    std::size_t from = 0;
    while (from < step.text.size()) {
        const std::size_t marker = step.text.find(statementMarker, from);
        const std::size_t to = marker == std::string::npos ? step.text.size() : marker;
        statements.push_back(step.text.substr(from, to - from));
        from = marker == std::string::npos ? to : to + statementMarker.size();
    }
    return statements;
}

int newestVersion(const std::vector<MigrationStep>& steps)
{
    return steps.empty() ? 0 : steps.back().version;
}

int schemaVersion(const Connection& connection)
{
    return static_cast<int>(numberFrom(connection, dialect::readSchemaVersion).value_or(0));
}

void applyMissing(const Connection& connection, const std::vector<MigrationStep>& steps)
{
    const ForeignKeysSuspended suspended(connection);
    Transaction transaction(connection, dialect::beginWriting);
    // Read inside the transaction: another program may have applied them while this one waited.
    const int present = schemaVersion(connection);
    for (const MigrationStep& step : steps) {
        if (step.version > present) {
            apply(connection, step);
        }
    }
    if (Statement(connection, dialect::findBrokenReferences).next()) {
        failAt(steps.empty() ? std::string() : steps.back().name, "a reference leads nowhere");
    }
    if (present < newestVersion(steps)) {
        run(connection, dialect::markAsOurs());
        run(connection, dialect::setSchemaVersion(newestVersion(steps)));
    }
    transaction.commit();
}

} // namespace quadrille::db
