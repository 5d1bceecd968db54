// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sql_errors.h"

#include "db/codec.h"

namespace quadrille::db
{

namespace
{

ErrorCode codeOf(dialect::Trouble trouble)
{
    using dialect::Trouble;
    switch (trouble) {
    case Trouble::locked:
        return ErrorCode::locked;
    case Trouble::full:
        return ErrorCode::diskFull;
    case Trouble::readOnly:
        return ErrorCode::readOnly;
    case Trouble::cannotOpen:
        return ErrorCode::cannotOpen;
    case Trouble::notADatabase:
        return ErrorCode::notAStore;
    case Trouble::diskFault:
        return ErrorCode::diskFault;
    case Trouble::damaged:
        return ErrorCode::storeDamaged;
    case Trouble::duplicate:
        return ErrorCode::notUnique;
    case Trouble::rule:
        return ErrorCode::refused;
    case Trouble::range:
        return ErrorCode::outOfRange;
    case Trouble::missingRecord:
        return ErrorCode::notFound;
    case Trouble::other:
        break;
    }
    return ErrorCode::storeFailed;
}

} // namespace

Error errorOf(const SqlError& error)
{
    Error result{
        .code = codeOf(dialect::troubleOf(error.code())), .subject = {}, .detail = error.what()};
    if (result.code == ErrorCode::outOfRange) {
        // The constraints are named after the fields that they bound.
        const std::size_t lastWord = result.detail.rfind(' ') + 1;
        result.field = choiceOf<Field>(result.detail.substr(lastWord)).value_or(Field::none);
    }
    return result;
}

} // namespace quadrille::db
