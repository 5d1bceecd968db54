// SPDX-License-Identifier: GPL-3.0-or-later
// A diary that somebody has as a file: CSV or JSON.
#pragma once

#include "app/diary_import/diary_csv.h"
#include "app/diary_import/diary_table.h"
#include "app/diary_import/text_encoding.h"

#include "core/result.h"

#include <QByteArray>
#include <QString>

#include <optional>

namespace quadrille::app
{

struct DiaryFile {
    QString name;
    bool isJson = false;
    TextEncoding encoding = TextEncoding::utf8;
    char separator = ','; ///< of a table
    DiaryTable table;
};

/// What a person has said instead of what is recognised.
struct ReadingWish {
    std::optional<TextEncoding> encoding = std::nullopt;
    std::optional<char> separator = std::nullopt;
};

/// The bytes of a file. Errors: cannotRead; badFormat for more than 256 MB.
Result<QByteArray> diaryBytes(const QString& file);
/// Reads them. Errors as diaryTableFromCsv() and diaryTableFromJson(); badFormat where the bytes
/// are no text of the encoding, or UTF-16.
Result<DiaryFile> readDiary(const QByteArray& bytes, const QString& name,
                            const ReadingWish& wish = {}, const ReadOn& readOn = {});

} // namespace quadrille::app
