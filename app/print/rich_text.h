// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include <initializer_list>
#include <string>
#include <vector>

namespace quadrille::app
{

/// A piece of a sentence, plain or bold, at the paragraph's size or small.
struct TextRun {
    QString text;
    bool bold = false;
    bool small = false;
    friend bool operator==(const TextRun&, const TextRun&) = default;
};

/// A sentence with bold pieces. A line separator (U+2028) starts a new line.
using RichText = std::vector<TextRun>;

/// Text that people typed, safe to lay out: line ends become line separators, other control
/// characters blanks, outer blanks go.
QString typedText(const std::string& text);

RichText plain(const QString& text);
RichText bold(const QString& text);
/// `pattern` with %1, %2 … replaced by the arguments in bold; the rest stays plain. A translation
/// may name them in any order.
RichText withBold(const QString& pattern, std::initializer_list<QString> arguments);
/// The same without marks, as it is read out.
QString plainText(const RichText& text);

} // namespace quadrille::app
