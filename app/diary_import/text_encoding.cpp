// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary_import/text_encoding.h"

#include <array>
#include <cstddef>
#include <cstdint>

namespace quadrille::app
{

namespace
{

/// 0x80 … 0x9F; 0 where Windows-1252 has no sign. Source: Unicode's mapping table CP1252.TXT.
constexpr std::array<char16_t, 32> upperControls{
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};
constexpr unsigned firstControl = 0x80;
constexpr unsigned behindControls = 0xA0;

void append(QByteArray& text, char16_t sign)
{
    constexpr unsigned twoBytes = 0x80;
    constexpr unsigned threeBytes = 0x800;
    constexpr unsigned low = 0x3F;
    const unsigned code = sign;
    if (code < twoBytes) {
        text.append(static_cast<char>(code));
    } else if (code < threeBytes) {
        text.append(static_cast<char>(0xC0U | (code >> 6U)));
        text.append(static_cast<char>(0x80U | (code & low)));
    } else {
        text.append(static_cast<char>(0xE0U | (code >> 12U)));
        text.append(static_cast<char>(0x80U | ((code >> 6U) & low)));
        text.append(static_cast<char>(0x80U | (code & low)));
    }
}

std::optional<QByteArray> fromWindows1252(const QByteArray& bytes)
{
    QByteArray text;
    text.reserve(bytes.size() + bytes.size() / 8);
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        char16_t sign = byte;
        if (byte >= firstControl && byte < behindControls) {
            sign = upperControls[byte - firstControl];
            if (sign == 0) {
                return std::nullopt;
            }
        }
        append(text, sign);
    }
    return text;
}

} // namespace

TextEncoding encodingOf(const QByteArray& bytes)
{
    return bytes.isValidUtf8() ? TextEncoding::utf8 : TextEncoding::windows1252;
}

std::optional<QByteArray> utf8From(const QByteArray& bytes, TextEncoding encoding)
{
    if (encoding == TextEncoding::windows1252) {
        return fromWindows1252(bytes);
    }
    if (!bytes.isValidUtf8()) {
        return std::nullopt;
    }
    return bytes.startsWith("\xEF\xBB\xBF") ? bytes.mid(3) : bytes;
}

} // namespace quadrille::app
