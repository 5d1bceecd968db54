// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/diary_mappings.h"

#include "db/failure.h"
#include "db/practice_preferences.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <algorithm>
#include <array>

namespace quadrille::db
{

namespace
{

constexpr const char* preferenceName = "diary_import_mappings";

template <class Choice>
using Word = std::pair<Choice, const char*>;

constexpr std::array orderWords{Word<DateOrder>{DateOrder::dayMonthYear, "dmy"},
                                Word<DateOrder>{DateOrder::monthDayYear, "mdy"},
                                Word<DateOrder>{DateOrder::yearMonthDay, "ymd"}};
constexpr std::array formWords{Word<DurationForm>{DurationForm::hoursMinutes, "h:mm"},
                               Word<DurationForm>{DurationForm::minutesSeconds, "mm:ss"}};

template <class Words, class Choice>
QJsonValue wordIn(const Words& words, const std::optional<Choice>& choice)
{
    for (const auto& [known, word] : words) {
        if (choice == known) {
            return QLatin1String(word);
        }
    }
    return QJsonValue::Null;
}

template <class Choice, class Words>
std::optional<Choice> choiceIn(const Words& words, const QJsonValue& value)
{
    for (const auto& [choice, word] : words) {
        if (value.toString() == QLatin1String(word)) {
            return choice;
        }
    }
    return std::nullopt;
}

QJsonObject jsonOf(const DiaryMapping& mapping)
{
    QJsonArray columns;
    for (const auto& [heading, meaning] : mapping.columns) {
        columns.append(
            QJsonObject{{QStringLiteral("heading"), QString::fromStdString(heading)},
                        {QStringLiteral("holds"), QString::fromStdString(nameOf(meaning))}});
    }
    return {{QStringLiteral("name"), QString::fromStdString(mapping.name)},
            {QStringLiteral("separator"), mapping.separator
                                              ? QJsonValue(QString(QLatin1Char(*mapping.separator)))
                                              : QJsonValue(QJsonValue::Null)},
            {QStringLiteral("date_order"), wordIn(orderWords, mapping.dateOrder)},
            {QStringLiteral("duration_form"), wordIn(formWords, mapping.durationForm)},
            {QStringLiteral("columns"), columns}};
}

DiaryMapping mappingFrom(const QJsonObject& object)
{
    DiaryMapping mapping;
    mapping.name = object[QStringLiteral("name")].toString().toStdString();
    const QString separator = object[QStringLiteral("separator")].toString();
    if (separator.size() == 1) {
        mapping.separator = separator.front().toLatin1();
    }
    mapping.dateOrder = choiceIn<DateOrder>(orderWords, object[QStringLiteral("date_order")]);
    mapping.durationForm =
        choiceIn<DurationForm>(formWords, object[QStringLiteral("duration_form")]);
    const QJsonArray columns = object[QStringLiteral("columns")].toArray();
    for (const QJsonValue& column : columns) {
        const auto meaning = columnNamed(column[QStringLiteral("holds")].toString().toStdString());
        if (meaning) {
            mapping.columns.emplace_back(column[QStringLiteral("heading")].toString().toStdString(),
                                         *meaning);
        }
    }
    return mapping;
}

} // namespace

std::vector<DiaryMapping> diaryMappings(Reading& reading)
{
    std::vector<DiaryMapping> mappings;
    const auto preference = practicePreference(reading, preferenceName);
    if (!preference) {
        return mappings;
    }
    const QJsonDocument document =
        QJsonDocument::fromJson(QByteArray::fromStdString(preference->value));
    if (!document.isArray()) {
        throw Failure({.code = ErrorCode::badFormat,
                       .subject = preferenceName,
                       .detail = "the remembered columns of diary files can’t be read"});
    }
    const QJsonArray stored = document.array();
    for (const QJsonValue& value : stored) {
        mappings.push_back(mappingFrom(value.toObject()));
    }
    std::ranges::sort(mappings, {}, &DiaryMapping::name);
    return mappings;
}

void saveDiaryMapping(Writing& writing, const DiaryMapping& mapping)
{
    std::vector<DiaryMapping> mappings = diaryMappings(writing);
    std::erase_if(mappings, [&](const DiaryMapping& known) { return known.name == mapping.name; });
    mappings.push_back(mapping);
    std::ranges::sort(mappings, {}, &DiaryMapping::name);
    QJsonArray stored;
    for (const DiaryMapping& known : mappings) {
        stored.append(jsonOf(known));
    }
    const auto before = practicePreference(writing, preferenceName);
    setPracticePreference(writing, preferenceName,
                          QJsonDocument(stored).toJson(QJsonDocument::Compact).toStdString(),
                          before ? before->version : 0);
}

} // namespace quadrille::db
