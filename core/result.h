// SPDX-License-Identifier: GPL-3.0-or-later
// A value or the reason why there is none. The interface is std::expected's, to be replaced by it
// when the compiler has it; the class is [[nodiscard]], so a dropped error does not compile.
#pragma once

#include "core/field.h"
#include "core/units.h"

#include <cassert>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace quadrille
{

/// What can go wrong in the world. app/error_text words each in one sentence: what, where, what to
/// do.
enum class ErrorCode {
    // values
    outOfRange, ///< `field` lies outside what the arithmetic allows; figures: value, least, most
    impossible, ///< the settings contradict each other; `field` is the one to change
    notFilled,  ///< `field` must be given
    notUnique,  ///< another record has this value already; `subject` is the value
    // strength-duration curves
    tooFewDurations, ///< figures: how many different phase durations there are, how many are needed
    noFit, ///< the thresholds do not follow the law; figures: rheobase and chronaxie as they came
           ///< out, or none
    // screening gate, see core/screening_gate.h
    notScreened,        ///< the course has no screening
    screeningNotSigned, ///< the latest one waits for a signature
    screeningTooOld,    ///< `detail` is the last day on which it held
    screeningBlocks,    ///< `subject` is the question as asked, `detail` its answer's word; of
                        ///< numb skin no question and "absent"
    // store
    cannotOpen,        ///< `subject` is the file, `detail` the system's reason
    notAStore,         ///< the file is something else
    newerStore,        ///< written by a newer program; figures: its schema, ours
    readOnly,          ///< the file or its folder can't be written
    locked,            ///< another program holds the file
    diskFull,          ///< no room to write
    diskFault,         ///< the disk or the system fails to read or write; `detail` says how
    migrationFailed,   ///< a step could not be applied; the file is as it was; `detail` says which
                       ///< and where the copy is
    storeDamaged,      ///< bytes or rows that contradict each other; `detail` says which
    logMissing,        ///< the file's write-ahead log is gone, and with it the latest changes
    onNetworkShare,    ///< no write-ahead log works there; `detail` names the kind of file system
    erasedNotScrubbed, ///< the person is erased, traces may be left in the file `subject`
    passphraseNeeded,  ///< `subject` is a backup sealed with a passphrase; none was given
    wrongPassphrase,   ///< `subject` is the backup
    backupDamaged,     ///< `subject` is the backup, cut off or altered; `detail` says how
    newerThanBackup,   ///< `subject` is the store; restoring would lose its latest changes
    notFound,          ///< `subject` names what was looked for
    refused,           ///< a rule of the store forbids the change; `detail` names the rule
    changedElsewhere,  ///< somebody else saved this record in the meantime
    storeFailed,       ///< anything else the database reports; `detail` is its text
    // files and command line
    cannotRead,  ///< `subject` is the file
    cannotWrite, ///< `subject` is the file, `detail` the system's reason
    badFormat,   ///< `subject` is the file or the text, `detail` where in it
    ambiguous,   ///< more than one fits; `detail` lists them
};

/// Why something could not be done. Holds facts, no sentences.
struct Error {
    ErrorCode code = ErrorCode::storeFailed;
    std::string subject;       ///< the file, record or value concerned, as the person knows it
    std::string detail;        ///< further facts, see ErrorCode
    Field field = Field::none; ///< the setting concerned, if one
    std::vector<Amount> figures = {}; ///< see ErrorCode
};

/// Holds a T or an Error. Asking for the one that is not there is a mistake of the program
/// (assertion).
template <class T>
class [[nodiscard]] Result
{
public:
    using value_type = T;
    Result(T value)
        : m_content(std::in_place_index<0>, std::move(value))
    {
    }
    Result(Error error)
        : m_content(std::in_place_index<1>, std::move(error))
    {
    }

    bool has_value() const { return m_content.index() == 0; }
    explicit operator bool() const { return has_value(); }
    const T& value() const&
    {
        assert(has_value());
        return *std::get_if<0>(&m_content);
    }
    T& value() &
    {
        assert(has_value());
        return *std::get_if<0>(&m_content);
    }
    T&& value() &&
    {
        assert(has_value());
        return std::move(*std::get_if<0>(&m_content));
    }
    const T& operator*() const& { return value(); }
    T& operator*() & { return value(); }
    T&& operator*() && { return std::move(*this).value(); }
    const T* operator->() const { return &value(); }
    T* operator->() { return &value(); }
    const Error& error() const
    {
        assert(!has_value());
        return *std::get_if<1>(&m_content);
    }

private:
    std::variant<T, Error> m_content;
};

/// The result of an act that gives nothing back.
template <>
class [[nodiscard]] Result<void>
{
public:
    using value_type = void;
    Result() = default;
    Result(Error error)
        : m_error(std::move(error))
    {
    }
    bool has_value() const { return !m_error.has_value(); }
    explicit operator bool() const { return has_value(); }
    const Error& error() const
    {
        assert(m_error.has_value());
        return *m_error;
    }

private:
    std::optional<Error> m_error;
};

} // namespace quadrille
