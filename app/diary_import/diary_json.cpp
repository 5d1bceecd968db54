// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary_import/diary_json.h"

#include "app/words/bad_format.h"

#include "core/diary_columns.h"

#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLocale>

#include <algorithm>
#include <optional>
#include <variant>

namespace quadrille::app
{

namespace
{

struct DiaryJsonWords {
    Q_DECLARE_TR_FUNCTIONS(DiaryJsonWords)
};

constexpr int knownVersion = 1;

/// For a sentence: one line, not too long.
QString quoted(const QString& text)
{
    return text.simplified().left(60);
}

bool isText(DiaryColumn column)
{
    return column == DiaryColumn::date || column == DiaryColumn::pad ||
           column == DiaryColumn::remark;
}

/// A value as a cell; nothing where it is of another kind.
std::optional<std::string> cellFrom(const QJsonValue& value, DiaryColumn column)
{
    if (value.isNull()) {
        return std::string();
    }
    if (isText(column)) {
        return value.isString() ? std::optional(value.toString().toStdString()) : std::nullopt;
    }
    if (!value.isDouble()) {
        return std::nullopt;
    }
    return QString::number(value.toDouble(), 'f', QLocale::FloatingPointShortest).toStdString();
}

class EntriesReader
{
public:
    explicit EntriesReader(const QString& name)
        : m_name(name)
    {
    }

    Result<DiaryTable> read(const QJsonArray& entries)
    {
        if (const auto problem = gatherHeadings(entries)) {
            return badFormat(m_name, *problem);
        }
        DiaryTable table;
        table.setHeadings(m_headings);
        int number = 0;
        for (const auto& value : entries) {
            const QJsonObject entry = value.toObject();
            ++number;
            for (const std::string& heading : m_headings) {
                const QJsonValue member = entry[QString::fromStdString(heading)];
                const auto cell =
                    cellFrom(member.isUndefined() ? QJsonValue(QJsonValue::Null) : member,
                             columnNamed(heading)->column);
                if (!cell || cell->find('\0') != std::string::npos) {
                    return badFormat(m_name, wrongKind(number, heading));
                }
                table.addCell(*cell);
            }
            table.endRow(number);
        }
        return table;
    }

private:
    std::optional<QString> gatherHeadings(const QJsonArray& entries)
    {
        int number = 0;
        for (const auto& value : entries) {
            ++number;
            if (!value.isObject()) {
                return DiaryJsonWords::tr("entry %1 is no object").arg(number);
            }
            const QStringList names = value.toObject().keys();
            for (const QString& member : names) {
                const std::string heading = member.toStdString();
                if (!columnNamed(heading)) {
                    return DiaryJsonWords::tr("entry %1 has “%2”, which no diary has; the names "
                                              "are: %3")
                        .arg(QString::number(number), quoted(member), diaryJsonHelp());
                }
                if (std::ranges::find(m_headings, heading) == m_headings.end()) {
                    m_headings.push_back(heading);
                }
            }
        }
        return std::nullopt;
    }
    static QString wrongKind(int number, const std::string& heading)
    {
        const QString name = QString::fromStdString(heading);
        return isText(columnNamed(heading)->column)
                   ? DiaryJsonWords::tr("entry %1: “%2” must be a text in quotes")
                         .arg(QString::number(number), quoted(name))
                   : DiaryJsonWords::tr("entry %1: “%2” must be a number without quotes")
                         .arg(QString::number(number), quoted(name));
    }

    QString m_name;
    std::vector<std::string> m_headings;
};

} // namespace

bool looksLikeJson(const QByteArray& bytes)
{
    constexpr int aGlance = 64;
    QByteArray start = bytes.left(aGlance);
    if (start.startsWith("\xEF\xBB\xBF")) {
        start = start.mid(3);
    }
    start = start.trimmed();
    return start.startsWith('{') || start.startsWith('[');
}

Result<DiaryTable> diaryTableFromJson(const QByteArray& bytes, const QString& name)
{
    // RFC 8259, 8.1: a mark may be ignored.
    const QByteArray text = bytes.startsWith("\xEF\xBB\xBF") ? bytes.mid(3) : bytes;
    QJsonParseError error{};
    const QJsonDocument document = QJsonDocument::fromJson(text, &error);
    if (error.error != QJsonParseError::NoError) {
        return badFormat(name, DiaryJsonWords::tr("no JSON (%1, at byte %2)")
                                   .arg(error.errorString(), QString::number(error.offset)));
    }
    const QJsonObject whole = document.object();
    if (whole[QStringLiteral("format")].toString() != QStringLiteral("quadrille-diary")) {
        return badFormat(name, DiaryJsonWords::tr("no diary: “format” is not “quadrille-diary”"));
    }
    if (whole[QStringLiteral("version")].toInt() != knownVersion) {
        return badFormat(name, DiaryJsonWords::tr("“version” is not 1, the one that is known"));
    }
    if (!whole[QStringLiteral("entries")].isArray()) {
        return badFormat(name, DiaryJsonWords::tr("“entries” is no list"));
    }
    const QStringList members = whole.keys();
    for (const QString& member : members) {
        if (member != QStringLiteral("format") && member != QStringLiteral("version") &&
            member != QStringLiteral("entries")) {
            return badFormat(name, DiaryJsonWords::tr("it has “%1” beside “format”, “version” and "
                                                      "“entries”")
                                       .arg(quoted(member)));
        }
    }
    return EntriesReader(name).read(whole[QStringLiteral("entries")].toArray());
}

QString diaryJsonHelp()
{
    QStringList names;
    for (const DiaryColumn column :
         {DiaryColumn::date, DiaryColumn::session, DiaryColumn::minutes, DiaryColumn::contractions,
          DiaryColumn::amplitude, DiaryColumn::comfort, DiaryColumn::skin, DiaryColumn::pad,
          DiaryColumn::remark}) {
        names.append(QString::fromStdString(nameOf({.column = column})));
        if (column == DiaryColumn::amplitude) {
            names.append(QString::fromStdString(nameOf({.column = column, .channel = 1})) +
                         QStringLiteral(" …"));
        }
    }
    return names.join(QStringLiteral(", "));
}

} // namespace quadrille::app
