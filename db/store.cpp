// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/store.h"

#include "db/failure.h"
#include "db/opening.h"
#include "db/sql.h"
#include "db/sql_errors.h"

namespace quadrille::db
{

namespace
{

/// The single catch: what `act` gives, or what it threw as an Error. A fault of the program itself
/// comes back as storeFailed too: the transaction is undone by then, and no exception may reach a
/// slot.
template <class Act>
auto caught(Act&& act) -> Result<std::invoke_result_t<Act>>
{
    try {
        if constexpr (std::is_void_v<std::invoke_result_t<Act>>) {
            act();
            return {};
        } else {
            return act();
        }
    } catch (const SqlError& error) {
        return errorOf(error);
    } catch (const Failure& failure) {
        return failure.error();
    } catch (const std::exception& error) {
        return Error{.code = ErrorCode::storeFailed, .subject = {}, .detail = error.what()};
    }
}

} // namespace

Result<std::unique_ptr<Store>> Store::open(const QString& file, Opening opening, const Clock& clock,
                                           std::chrono::milliseconds patience)
{
    auto opened = caught([&] { return openFile(file, opening, clock, patience, builtInSteps()); });
    if (!opened) {
        Error error = opened.error();
        error.subject = file.toStdString();
        if (error.code == ErrorCode::storeDamaged) {
            error.code = ErrorCode::notAStore;
        }
        return error;
    }
    return std::unique_ptr<Store>(
        new Store(std::move(opened->connection), clock, opened->writable));
}

Store::Store(std::unique_ptr<Connection> connection, const Clock& clock, bool writable)
    : m_connection(std::move(connection))
    , m_clock(clock)
    , m_writable(writable)
{
}

Store::~Store() = default;

QString Store::file() const
{
    return m_connection->file();
}

bool Store::isWritable() const
{
    return m_writable;
}

Result<void> Store::inReadTransaction(const std::function<void(Reading&)>& act)
{
    return caught([&] {
        Transaction transaction(*m_connection, dialect::beginReading);
        Reading reading(*m_connection);
        act(reading);
        transaction.commit();
    });
}

Result<void> Store::inWriteTransaction(const Author& author, const std::string& what,
                                       const std::function<void(Writing&)>& act)
{
    if (!m_writable) {
        return Error{.code = ErrorCode::readOnly, .subject = file().toStdString(), .detail = {}};
    }
    return caught([&] {
        Transaction transaction(*m_connection, dialect::beginWriting);
        Writing writing(*m_connection, author, what, m_clock.now());
        act(writing);
        transaction.commit();
    });
}

} // namespace quadrille::db
