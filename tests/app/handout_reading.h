// SPDX-License-Identifier: GPL-3.0-or-later
// The words of a handout as plain text, for tests of what a patient reads.
#pragma once

#include "app/print/handout_words.h"
#include "tests/app/handout_samples.h"

#include <string>

namespace quadrille::tests
{

/// In English as it is written in the United Kingdom.
inline app::HandoutText wordsOf(const HandoutContent& content)
{
    return app::HandoutWords(app::QuantityText(QLocale(QLocale::English, QLocale::UnitedKingdom)))
        .of(content);
}

inline app::HandoutText wordsOf(const Block& block)
{
    return wordsOf(sampleContent(samplePlan({block})));
}

/// With blanks for no-break spaces.
inline std::string read(const QString& text)
{
    return QString(text).replace(app::noBreakSpace(), QStringLiteral(" ")).toStdString();
}

inline std::string read(const QStringList& parts)
{
    return read(parts.join(QStringLiteral(" · ")));
}

inline std::string read(const app::RichText& text)
{
    return read(app::plainText(text));
}

inline std::string bodyOf(const app::StepText& step)
{
    std::string body;
    for (const app::RichText& paragraph : step.body) {
        body += (body.empty() ? "" : "\n") + read(paragraph);
    }
    return body;
}

} // namespace quadrille::tests
