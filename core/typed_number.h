// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers typed digit by digit, read exactly.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace quadrille
{

/// What a field takes: so many digits before the decimal sign and after it. `scale` base units make
/// the unit in which it is typed; a whole number of them for each decimal.
struct NumberForm {
    int digits = 3;
    int decimals = 0;
    std::int64_t scale = 1;
};

/// "12.5" in base units; the decimal sign is a point and may stand last. Nothing for anything else,
/// an empty text too.
std::optional<std::int64_t> numberFrom(std::string_view text, const NumberForm& form);

} // namespace quadrille
