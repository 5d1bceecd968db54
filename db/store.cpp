// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/store.h"

#include "db/caught.h"
#include "db/erasing.h"
#include "db/opening.h"
#include "db/sql.h"

namespace quadrille::db
{

Result<std::unique_ptr<Store>> Store::open(const QString& file, Opening opening, const Clock& clock,
                                           std::chrono::milliseconds patience)
{
    auto opened = caught([&] { return openFile(file, opening, clock, patience, builtInSteps()); });
    if (!opened) {
        Error error = opened.error();
        error.subject = file.toStdString();
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

Result<void> Store::erase(const Author& author, PatientId patient, ErasureGround ground)
{
    auto erased = inWriteTransaction(
        author, "erase patient", [&](Writing& writing) { erasePatient(writing, patient, ground); });
    if (!erased) {
        return erased;
    }
    if (const Result<void> scrubbed = caught([&] { scrub(*m_connection); }); !scrubbed) {
        return Error{.code = ErrorCode::erasedNotScrubbed,
                     .subject = file().toStdString(),
                     .detail = scrubbed.error().detail};
    }
    return {};
}

Result<bool> Store::scrubErased()
{
    return caught([&] {
        const bool anybody = numberFrom(*m_connection, "SELECT 1 FROM erasure").has_value();
        if (anybody) {
            scrub(*m_connection);
        }
        return anybody;
    });
}

} // namespace quadrille::db
