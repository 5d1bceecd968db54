// SPDX-License-Identifier: GPL-3.0-or-later
// Bytes of a text file as UTF-8.
#pragma once

#include <QByteArray>

#include <optional>

namespace quadrille::app
{

/// Windows-1252 is Latin-1 (ISO 8859-1) with signs such as € and quotes where that has none.
enum class TextEncoding { utf8, windows1252 };

/// UTF-8 where the bytes are such (RFC 3629), else Windows-1252.
TextEncoding encodingOf(const QByteArray& bytes);
/// The text in UTF-8, a byte-order mark left away; nothing where the bytes are no text of that
/// encoding.
std::optional<QByteArray> utf8From(const QByteArray& bytes, TextEncoding encoding);

} // namespace quadrille::app
