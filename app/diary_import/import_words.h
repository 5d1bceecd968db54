// SPDX-License-Identifier: GPL-3.0-or-later
// The words of an import: columns, states of rows, what is wrong, how many.
#pragma once

#include "app/words/quantity_text.h"

#include "core/diary_import.h"

#include <QCoreApplication>
#include <QString>
#include <QStringList>

#include <string>
#include <vector>

namespace quadrille::app
{

/// "Minutes", "Amplitude, channel 2".
QString columnTitle(const ColumnMeaning& meaning);
/// "new", "on file already", "differs from what is on file" …
QString stateName(RowState state);
/// The same for machines: "new", "same", "conflict", "before_start" …
QString stateWord(RowState state);

/// One fault as a sentence that says what and what to do, without the line: "“abc” under “min” is
/// no length of time. Write minutes …". `headings` are the file's.
QString faultSentence(const CellFault& fault, const std::vector<std::string>& headings,
                      bool isJson);
/// "Line 12" or, of JSON, "Entry 12".
QString placeName(int line, bool isJson);

/// What a session and its day say: "20 min, 75 contractions, 42.5 mA, comfort 7"; a dash where
/// nothing is known.
QString sessionWords(const DiaryEntry& entry, const QuantityText& text);
QString dayWords(const DiaryDay& day, const QuantityText& text);

/// How the rows fall, one sentence each, what is left out named: "12 of 31 rows lie outside this
/// course; they are left out."
QStringList countSentences(const DiaryImport& import);
/// The same once it is taken over: how many were taken, and what became of those that differed.
QStringList reportSentences(const DiaryImport& import);
/// "The file has no column for minutes. Columns found: … Choose one."
QString missingColumnSentence(DiaryColumn column, const std::vector<std::string>& headings);
/// Why the order of dates is asked.
QString dateOrderQuestion(bool contradicts);
QString durationFormQuestion();

struct ImportWords {
    Q_DECLARE_TR_FUNCTIONS(ImportWords)
};

} // namespace quadrille::app
