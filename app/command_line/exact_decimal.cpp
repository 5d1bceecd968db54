// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/exact_decimal.h"

#include "core/quantity.h"

#include <cstdlib>

namespace quadrille::app
{

std::optional<std::int64_t> countFromDecimal(std::string_view text, std::int64_t partsPerUnit)
{
    const bool negative = !text.empty() && text.front() == '-';
    if (negative) {
        text.remove_prefix(1);
    }
    std::int64_t count = 0;
    bool afterPoint = false;
    bool digitBefore = false; // a point stands between digits
    for (const char c : text) {
        if (c == '.' && digitBefore && !afterPoint) {
            afterPoint = true;
            digitBefore = false;
            continue;
        }
        const int digit = c - '0';
        if (digit < 0 || digit > 9) {
            return std::nullopt;
        }
        digitBefore = true;
        if (!afterPoint) {
            const auto tenfold = checkedProduct(count, 10);
            if (!tenfold || __builtin_add_overflow(*tenfold, digit * partsPerUnit, &count)) {
                return std::nullopt;
            }
            continue;
        }
        partsPerUnit /= 10;
        if ((partsPerUnit == 0 && digit != 0) ||
            __builtin_add_overflow(count, digit * partsPerUnit, &count)) {
            return std::nullopt;
        }
    }
    if (!digitBefore) {
        return std::nullopt;
    }
    return negative ? -count : count;
}

QString decimalFrom(std::int64_t count, std::int64_t partsPerUnit)
{
    const QString sign = count < 0 ? QStringLiteral("-") : QString();
    const std::int64_t whole = std::abs(count / partsPerUnit);
    std::int64_t parts = std::abs(count % partsPerUnit);
    QString decimals;
    while (parts != 0) {
        parts *= 10;
        decimals += QString::number(parts / partsPerUnit);
        parts %= partsPerUnit;
    }
    const QString number = sign + QString::number(whole);
    return decimals.isEmpty() ? number : number + QLatin1Char('.') + decimals;
}

} // namespace quadrille::app
