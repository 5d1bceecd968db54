// SPDX-License-Identifier: GPL-3.0-or-later
// Signs of a cell as a file writes it, the same in every language.
#pragma once

#include <string_view>

namespace quadrille
{

inline bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

/// Without the blanks around it.
inline std::string_view trimmed(std::string_view text)
{
    constexpr std::string_view blanks = " \t\r\n";
    const auto first = text.find_first_not_of(blanks);
    return first == std::string_view::npos
               ? std::string_view()
               : text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

} // namespace quadrille
