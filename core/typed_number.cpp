// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/typed_number.h"

namespace quadrille
{

std::optional<std::int64_t> numberFrom(std::string_view text, const NumberForm& form)
{
    std::int64_t number = 0;
    std::int64_t unit = form.scale;
    int digits = 0;
    int decimals = 0;
    bool afterSign = false;
    for (const char sign : text) {
        if (sign == '.' && !afterSign && digits > 0 && form.decimals > 0) {
            afterSign = true;
        } else if (sign < '0' || sign > '9') {
            return std::nullopt;
        } else if (afterSign) {
            unit /= 10;
            number += (sign - '0') * unit;
            ++decimals;
        } else {
            number = number * 10 + (sign - '0') * unit;
            ++digits;
        }
        if (digits > form.digits || decimals > form.decimals) {
            return std::nullopt;
        }
    }
    return digits > 0 ? std::optional(number) : std::nullopt;
}

} // namespace quadrille
