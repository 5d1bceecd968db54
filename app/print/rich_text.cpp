// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/rich_text.h"

#include <cstddef>

namespace quadrille::app
{

QString typedText(const std::string& text)
{
    QString typed = QString::fromStdString(text).trimmed();
    typed.replace(QStringLiteral("\r\n"), QStringLiteral("\n"));
    for (QChar& c : typed) {
        if (c == QLatin1Char('\n') || c == QLatin1Char('\r') || c == QChar::ParagraphSeparator) {
            c = QChar::LineSeparator;
        } else if (c.category() == QChar::Other_Control) {
            c = QLatin1Char(' ');
        }
    }
    return typed;
}

RichText plain(const QString& text)
{
    return {{text, false}};
}

RichText bold(const QString& text)
{
    return {{text, true}};
}

RichText withBold(const QString& pattern, std::initializer_list<QString> arguments)
{
    RichText text;
    QString between;
    for (qsizetype at = 0; at < pattern.size(); ++at) {
        const bool isGap = pattern[at] == QLatin1Char('%') && at + 1 < pattern.size();
        const int number = isGap ? pattern[at + 1].digitValue() : -1;
        if (number < 1 || static_cast<std::size_t>(number) > arguments.size()) {
            between += pattern[at];
            continue;
        }
        if (!between.isEmpty()) {
            text.push_back({between, false});
            between.clear();
        }
        text.push_back({*(arguments.begin() + number - 1), true});
        ++at;
    }
    if (!between.isEmpty()) {
        text.push_back({between, false});
    }
    return text;
}

QString plainText(const RichText& text)
{
    QString read;
    for (const TextRun& run : text) {
        read += run.text;
    }
    return read;
}

} // namespace quadrille::app
