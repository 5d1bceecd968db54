// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/failure.h"
#include "db/sql.h"
#include "db/sql_errors.h"

#include "core/result.h"

#include <concepts>
#include <exception>
#include <type_traits>

namespace quadrille::db
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

} // namespace quadrille::db
