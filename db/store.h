// SPDX-License-Identifier: GPL-3.0-or-later
// The only public door to a practice's file. SQL stays behind it.
#pragma once

#include "db/chain_end.h"

#include "core/calendar.h"
#include "core/ids.h"
#include "core/result.h"

#include <QString>

#include <chrono>
#include <concepts>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <type_traits>

namespace quadrille::db
{

class Connection;

/// Who makes a change; written into the change record. No practitioner: the program itself, while a
/// practice is set up.
struct Author {
    std::optional<PractitionerId> practitioner = std::nullopt;
    std::string name; ///< as it is today
};

/// A consistent view of the store, alive inside Store::read or Store::write only.
class Reading
{
public:
    explicit Reading(Connection& connection)
        : m_connection(connection)
    {
    }
    Connection& connection() const { return m_connection; }

private:
    Connection& m_connection;
};

/// One change: everything in it is saved together, with its rows in the change record, or not at
/// all.
class Writing : public Reading
{
public:
    Writing(Connection& connection, const Author& author, const std::string& what, Moment moment)
        : Reading(connection)
        , m_author(author)
        , m_what(what)
        , m_moment(moment)
    {
    }
    const Author& author() const { return m_author; }
    /// What the change is, in words of the trade.
    const std::string& what() const { return m_what; }
    Moment moment() const { return m_moment; }
    /// Where the change record ends after the rows of this change; nothing before the first. Nobody
    /// else writes meanwhile, so it need not be read again for each row.
    std::optional<ChainEnd>& chainEnd() { return m_chainEnd; }

private:
    const Author& m_author;
    const std::string& m_what;
    Moment m_moment;
    std::optional<ChainEnd> m_chainEnd;
};

enum class Opening {
    existing,        ///< refuse when the file is not there
    createIfMissing, ///< make an empty practice
    readOnly,        ///< never write; a file that needs a step of the schema is refused
};

/// Why everything of a person is erased.
enum class ErasureGround {
    request,       ///< the person's own
    retentionOver, ///< the law's term for keeping records has passed
    enteredInError,
};

/// How long one program waits for another that holds the file.
inline constexpr std::chrono::milliseconds usualPatience{5000};

/// One practice in one SQLite file. Not copied; belongs to one thread. Several may be open on one
/// file at once.
class Store
{
public:
    /// Opens `file`, applying the steps of the schema that are missing in one transaction, after
    /// copying the file aside. Errors: cannotOpen, cannotWrite where a new one can't be made,
    /// notAStore, storeDamaged, logMissing, onNetworkShare, newerStore, readOnly, locked, diskFull,
    /// migrationFailed; the file is then as it was. `clock` outlives the store.
    static Result<std::unique_ptr<Store>> open(const QString& file, Opening opening,
                                               const Clock& clock,
                                               std::chrono::milliseconds patience = usualPatience);
    ~Store();
    Store(const Store&) = delete;
    Store& operator=(const Store&) = delete;

    QString file() const;
    /// False for a store opened read-only, by wish or because the file can't be written.
    bool isWritable() const;

    /// `act(Reading&)` on one consistent view. What it returns comes back, or why it failed.
    template <std::invocable<Reading&> Act>
    auto read(Act&& act) -> Result<std::invoke_result_t<Act, Reading&>>;

    /// `act(Writing&)` in one transaction: committed when it returns, rolled back when it fails.
    /// `what` names the change in words of the trade, for the change record: "add patient".
    /// Errors: readOnly, locked, diskFull, refused, notUnique, notFound, changedElsewhere,
    /// storeFailed.
    template <std::invocable<Writing&> Act>
    auto write(const Author& author, const std::string& what, Act&& act)
        -> Result<std::invoke_result_t<Act, Writing&>>;

    /// Erases everything of a patient: records, plans, diary, and the values in the change record.
    /// The rows of the change record stay without them, and a record of the act with the author's
    /// name. Afterwards the file is written anew, so that no byte of the person is left in it.
    /// Errors: as write; erasedNotScrubbed when the person is erased but the file could not be
    /// written anew (another program reads it, or the disk is full): call scrubErased() later.
    Result<void> erase(const Author& author, PatientId patient, ErasureGround ground);
    /// Writes the file anew if anybody was ever erased; any number of times. True where somebody
    /// was.
    Result<bool> scrubErased();

private:
    Store(std::unique_ptr<Connection> connection, const Clock& clock, bool writable);
    /// The single catch: runs `act` in a transaction, turns what is thrown into an Error.
    Result<void> inReadTransaction(const std::function<void(Reading&)>& act);
    Result<void> inWriteTransaction(const Author& author, const std::string& what,
                                    const std::function<void(Writing&)>& act);

    std::unique_ptr<Connection> m_connection;
    const Clock& m_clock;
    bool m_writable;
};

template <std::invocable<Reading&> Act>
auto Store::read(Act&& act) -> Result<std::invoke_result_t<Act, Reading&>>
{
    using Answer = std::invoke_result_t<Act, Reading&>;
    if constexpr (std::is_void_v<Answer>) {
        return inReadTransaction([&](Reading& reading) { act(reading); });
    } else {
        std::optional<Answer> value;
        const Result<void> done =
            inReadTransaction([&](Reading& reading) { value = act(reading); });
        if (!done) {
            return done.error();
        }
        return std::move(*value);
    }
}

template <std::invocable<Writing&> Act>
auto Store::write(const Author& author, const std::string& what, Act&& act)
    -> Result<std::invoke_result_t<Act, Writing&>>
{
    using Answer = std::invoke_result_t<Act, Writing&>;
    if constexpr (std::is_void_v<Answer>) {
        return inWriteTransaction(author, what, [&](Writing& writing) { act(writing); });
    } else {
        std::optional<Answer> value;
        const Result<void> done =
            inWriteTransaction(author, what, [&](Writing& writing) { value = act(writing); });
        if (!done) {
            return done.error();
        }
        return std::move(*value);
    }
}

} // namespace quadrille::db
