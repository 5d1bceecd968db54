// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/patient_search.h"

#include <QStringList>

#include <algorithm>
#include <array>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr std::array<std::pair<char16_t, const char*>, 9> unaccented{{{u'ø', "o"},
                                                                      {u'ł', "l"},
                                                                      {u'đ', "d"},
                                                                      {u'ð', "d"},
                                                                      {u'þ', "th"},
                                                                      {u'æ', "ae"},
                                                                      {u'œ', "oe"},
                                                                      {u'ß', "ss"},
                                                                      {u'ı', "i"}}};

void appendFolded(QString& result, QChar letter)
{
    for (const auto& [special, plain] : unaccented) {
        if (letter == QChar(special)) {
            result += QLatin1StringView(plain);
            return;
        }
    }
    result += letter.isLetterOrNumber() ? letter : QChar(u' ');
}

} // namespace

QString folded(const QString& text)
{
    QString result;
    const QString parts = text.toCaseFolded().normalized(QString::NormalizationForm_KD);
    for (const QChar letter : parts) {
        if (!letter.isMark()) {
            appendFolded(result, letter);
        }
    }
    return result.simplified();
}

bool matches(const QString& searchable, const QString& wanted)
{
    const QStringList words = wanted.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    return std::all_of(words.begin(), words.end(),
                       [&](const QString& word) { return searchable.contains(word); });
}

} // namespace quadrille::app
