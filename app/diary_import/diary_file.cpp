// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary_import/diary_file.h"

#include "app/diary_import/diary_json.h"
#include "app/words/bad_format.h"

#include <QCoreApplication>
#include <QFile>

#include <utility>

namespace quadrille::app
{

namespace
{

struct DiaryFileWords {
    Q_DECLARE_TR_FUNCTIONS(DiaryFileWords)
};

constexpr qint64 mostBytes = qint64(256) * 1024 * 1024;

Error cannotRead(const QFile& file)
{
    return {ErrorCode::cannotRead,
            file.fileName().toStdString(),
            file.errorString().toStdString(),
            Field::none,
            {}};
}

} // namespace

Result<QByteArray> diaryBytes(const QString& file)
{
    QFile source(file);
    if (!source.open(QIODevice::ReadOnly)) {
        return cannotRead(source);
    }
    QByteArray bytes = source.read(mostBytes + 1);
    if (source.error() != QFileDevice::NoError) {
        return cannotRead(source);
    }
    if (bytes.size() > mostBytes) {
        return badFormat(file, DiaryFileWords::tr("more than 256 MB, which is no diary; choose "
                                                  "another file or split it"));
    }
    return bytes;
}

Result<DiaryFile> readDiary(const QByteArray& bytes, const QString& name, const ReadingWish& wish,
                            const ReadOn& readOn)
{
    DiaryFile file;
    file.name = name;
    if (bytes.startsWith("\xFF\xFE") || bytes.startsWith("\xFE\xFF")) {
        return badFormat(name, DiaryFileWords::tr("UTF-16 text; save it as UTF-8"));
    }
    file.isJson = looksLikeJson(bytes);
    if (file.isJson) {
        auto table = diaryTableFromJson(bytes, name);
        if (!table) {
            return table.error();
        }
        file.table = std::move(table).value();
        return file;
    }
    file.encoding = wish.encoding.value_or(encodingOf(bytes));
    const auto text = utf8From(bytes, file.encoding);
    if (!text) {
        return badFormat(name, file.encoding == TextEncoding::utf8
                                   ? DiaryFileWords::tr("not UTF-8 text; choose the other "
                                                        "encoding, or save it as UTF-8")
                                   : DiaryFileWords::tr("neither UTF-8 nor Windows-1252 text; "
                                                        "save the table as CSV in UTF-8"));
    }
    file.separator = wish.separator.value_or(separatorOf(*text));
    auto table = diaryTableFromCsv(*text, file.separator, name, readOn);
    if (!table) {
        return table.error();
    }
    file.table = std::move(table).value();
    return file;
}

} // namespace quadrille::app
