// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/support/fixed_clock.h"

#include "db/sql.h"
#include "db/store.h"

#include <QString>
#include <QTemporaryDir>

#include <gtest/gtest.h>
#include <memory>
#include <stdexcept>
#include <string>

namespace quadrille::tests
{

/// What a result holds; a test that expects one ends with the error otherwise.
template <class T>
T must(Result<T> result)
{
    if (!result) {
        throw std::runtime_error("unexpected error " +
                                 std::to_string(static_cast<int>(result.error().code)) + ": " +
                                 result.error().subject + " " + result.error().detail);
    }
    if constexpr (!std::is_void_v<T>) {
        return std::move(result).value();
    }
}

template <class T>
ErrorCode codeOf(const Result<T>& result)
{
    if (result) {
        throw std::runtime_error("an error was expected and there is none");
    }
    return result.error().code;
}

/// A folder of its own with a file for a store, and a clock that stands at 12 March 2026, 10:42.
/// Everything is gone with it.
class TempStore
{
public:
    TempStore()
        : clock(Moment(day(2026, 3, 12)) + std::chrono::hours(10) + std::chrono::minutes(42))
    {
        if (!m_folder.isValid()) {
            throw std::runtime_error("no temporary folder");
        }
    }
    QString folder() const { return m_folder.path(); }
    QString file() const { return m_folder.filePath(QStringLiteral("practice.quadrille")); }

    std::unique_ptr<db::Store> open(db::Opening opening = db::Opening::createIfMissing) const
    {
        return must(db::Store::open(file(), opening, clock, shortPatience));
    }
    Result<std::unique_ptr<db::Store>> tryToOpen(db::Opening opening) const
    {
        return db::Store::open(file(), opening, clock, shortPatience);
    }
    /// The database itself, past the store.
    std::unique_ptr<db::Connection> rawConnection() const
    {
        auto raw = std::make_unique<db::Connection>(file(), db::Access::readWrite, shortPatience);
        db::run(*raw, "PRAGMA foreign_keys = ON");
        return raw;
    }

    static constexpr std::chrono::milliseconds shortPatience{1};
    FixedClock clock;

private:
    QTemporaryDir m_folder;
};

} // namespace quadrille::tests
