// SPDX-License-Identifier: GPL-3.0-or-later
// Decimal text of tables, with a point whatever the locale, to and from whole numbers of a base
// unit. No double stands between, so 42.5 mA is 42 500 µA and comes back as 42.5.
#pragma once

#include <QString>

#include <cstdint>
#include <optional>
#include <string_view>

namespace quadrille::app
{

/// Reads "42.5" as a whole number of parts: 42 500 with `partsPerUnit` = 1000 (a power of ten).
/// Digits, at most one point between digits, a minus before them. Nothing when it is written
/// otherwise, has more decimals than parts (zeros apart) or does not fit 64 bits.
std::optional<std::int64_t> countFromDecimal(std::string_view text, std::int64_t partsPerUnit);
/// The reverse, without needless zeros: 42 500 is "42.5".
QString decimalFrom(std::int64_t count, std::int64_t partsPerUnit);

} // namespace quadrille::app
