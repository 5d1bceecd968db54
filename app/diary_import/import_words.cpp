// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary_import/import_words.h"

#include "core/diary_import.h"

#include <QCoreApplication>

#include <algorithm>

namespace quadrille::app
{

namespace
{

/// A word of the file in a sentence.
QString quotedOf(const std::string& text)
{
    constexpr int longest = 60;
    return QString::fromStdString(text).simplified().left(longest);
}

QString outsideSentence(const DiaryImport& import)
{
    const auto outside = import.count(RowState::beforeStart) + import.count(RowState::afterEnd);
    return outside == 0 ? QString()
                        : ImportWords::tr("%1 of %n row(s) lie outside this course; they are left "
                                          "out.",
                                          nullptr, static_cast<int>(import.rows.size()))
                              .arg(outside);
}

QString countOf(const DiaryImport& import, RowState state)
{
    const auto count = static_cast<int>(import.count(state));
    if (count == 0) {
        return {};
    }
    switch (state) {
    case RowState::same:
        return ImportWords::tr("%n row(s) are on file already; they are left out.", nullptr, count);
    case RowState::afterToday:
        return ImportWords::tr("%n row(s) lie after today; they are left out.", nullptr, count);
    case RowState::repeated:
        return ImportWords::tr("%n row(s) say again what another row says; they are left out.",
                               nullptr, count);
    case RowState::saysNothing:
        return ImportWords::tr("%n row(s) name a day and nothing else; they are left out.", nullptr,
                               count);
    case RowState::invalid:
        return ImportWords::tr("%n row(s) can’t be read; they are left out.", nullptr, count);
    case RowState::conflict:
        return ImportWords::tr("%n row(s) differ from what is on file.", nullptr, count);
    case RowState::fresh:
        return ImportWords::tr("%n row(s) are new.", nullptr, count);
    case RowState::beforeStart:
    case RowState::afterEnd:
        break;
    }
    return {};
}

QStringList leftOutSentences(const DiaryImport& import)
{
    QStringList sentences{countOf(import, RowState::same), outsideSentence(import)};
    for (const RowState state :
         {RowState::afterToday, RowState::repeated, RowState::saysNothing, RowState::invalid}) {
        sentences.append(countOf(import, state));
    }
    return sentences;
}

} // namespace

QString columnTitle(const ColumnMeaning& meaning)
{
    switch (meaning.column) {
    case DiaryColumn::date:
        return ImportWords::tr("Date");
    case DiaryColumn::session:
        return ImportWords::tr("Session number");
    case DiaryColumn::minutes:
        return ImportWords::tr("Minutes");
    case DiaryColumn::contractions:
        return ImportWords::tr("Contractions");
    case DiaryColumn::amplitude:
        if (meaning.channel > 0) {
            return ImportWords::tr("Amplitude, channel %1").arg(meaning.channel);
        }
        return meaning.site.empty()
                   ? ImportWords::tr("Amplitude")
                   : ImportWords::tr("Amplitude, %1").arg(QString::fromStdString(meaning.site));
    case DiaryColumn::comfort:
        return ImportWords::tr("Comfort");
    case DiaryColumn::skin:
        return ImportWords::tr("Skin");
    case DiaryColumn::pad:
        return ImportWords::tr("Pad");
    case DiaryColumn::remark:
        return ImportWords::tr("Remark");
    }
    return {};
}

QString stateName(RowState state)
{
    switch (state) {
    case RowState::fresh:
        return ImportWords::tr("new");
    case RowState::same:
        return ImportWords::tr("on file already");
    case RowState::conflict:
        return ImportWords::tr("differs");
    case RowState::beforeStart:
        return ImportWords::tr("before the course");
    case RowState::afterEnd:
        return ImportWords::tr("after the course");
    case RowState::afterToday:
        return ImportWords::tr("after today");
    case RowState::repeated:
        return ImportWords::tr("twice in the file");
    case RowState::saysNothing:
        return ImportWords::tr("says nothing");
    case RowState::invalid:
        return ImportWords::tr("can’t be read");
    }
    return {};
}

QString stateWord(RowState state)
{
    switch (state) {
    case RowState::fresh:
        return QStringLiteral("new");
    case RowState::same:
        return QStringLiteral("same");
    case RowState::conflict:
        return QStringLiteral("conflict");
    case RowState::beforeStart:
        return QStringLiteral("before_start");
    case RowState::afterEnd:
        return QStringLiteral("after_end");
    case RowState::afterToday:
        return QStringLiteral("after_today");
    case RowState::repeated:
        return QStringLiteral("repeated");
    case RowState::saysNothing:
        return QStringLiteral("says_nothing");
    case RowState::invalid:
        return QStringLiteral("invalid");
    }
    return {};
}

QString placeName(int line, bool isJson)
{
    return isJson ? ImportWords::tr("Entry %1").arg(line) : ImportWords::tr("Line %1").arg(line);
}

QString sessionWords(const DiaryEntry& entry, const QuantityText& text)
{
    if (entry.withdrawn) {
        return ImportWords::tr("withdrawn");
    }
    QStringList parts{text.shortTime(entry.duration)};
    if (entry.contractions) {
        parts.append(ImportWords::tr("%n contraction(s)", nullptr, *entry.contractions));
    }
    for (const SiteAmplitude& amplitude : entry.amplitudes) {
        parts.append(text.setting(Field::amplitudeCeiling, amplitude.amplitude.count()));
    }
    if (entry.comfort) {
        parts.append(ImportWords::tr("comfort %1").arg(*entry.comfort));
    }
    return parts.join(QStringLiteral(", "));
}

QString dayWords(const DiaryDay& day, const QuantityText& text)
{
    QStringList parts;
    if (day.skin) {
        const QString skin =
            ImportWords::tr("skin %1").arg(text.count(static_cast<std::int64_t>(*day.skin)));
        parts.append(day.skinPad.empty()
                         ? skin
                         : ImportWords::tr("%1 (%2)", "skin, pad")
                               .arg(skin, QString::fromStdString(day.skinPad).simplified()));
    }
    if (!day.remark.empty()) {
        parts.append(ImportWords::tr("“%1”").arg(QString::fromStdString(day.remark).simplified()));
    }
    return parts.isEmpty() ? QStringLiteral("—") : parts.join(QStringLiteral(", "));
}

QStringList countSentences(const DiaryImport& import)
{
    QStringList sentences{countOf(import, RowState::fresh), countOf(import, RowState::conflict)};
    sentences += leftOutSentences(import);
    sentences.removeAll(QString());
    if (sentences.isEmpty()) {
        sentences.append(ImportWords::tr("The file has no rows."));
    }
    return sentences;
}

QStringList reportSentences(const DiaryImport& import)
{
    QStringList sentences{ImportWords::tr("%n row(s) are taken over.", nullptr,
                                          static_cast<int>(import.rowsTaken()))};
    if (const auto conflicts = import.count(RowState::conflict); conflicts > 0) {
        const auto taken = std::ranges::count(import.rows, true, &ImportRow::takeFile);
        sentences.append(ImportWords::tr("Where rows differ from what is on file, the file’s was "
                                         "taken for %1 of %2.")
                             .arg(taken)
                             .arg(conflicts));
    }
    sentences += leftOutSentences(import);
    sentences.removeAll(QString());
    return sentences;
}

QString missingColumnSentence(DiaryColumn column, const std::vector<std::string>& headings)
{
    QStringList found;
    for (const std::string& heading : headings) {
        found.append(quotedOf(heading));
    }
    return ImportWords::tr("The file has no column for %1. Columns found: %2. Choose one.")
        .arg(columnTitle({.column = column}).toLower(), found.join(QStringLiteral(", ")));
}

QString dateOrderQuestion(bool contradicts)
{
    return contradicts
               ? ImportWords::tr("Some dates of the file have the day first, others the month. "
                                 "Say which order is meant; the others can’t be read then.")
               : ImportWords::tr("Dates such as 3/4/2026 can be read in two ways. Say which "
                                 "number is the day.");
}

QString durationFormQuestion()
{
    return ImportWords::tr("Times such as 1:05 can be hours and minutes or minutes and seconds. "
                           "Say which.");
}

} // namespace quadrille::app
