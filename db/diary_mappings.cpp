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

[[noreturn]] void refuseStored()
{
    throw Failure({.code = ErrorCode::badFormat,
                   .subject = preferenceName,
                   .detail = "the remembered columns of diary files can’t be read"});
}

bool isSilent(const QJsonValue& value)
{
    return value.isNull() || value.isUndefined();
}

/// A text that says something.
std::string textIn(const QJsonValue& value)
{
    std::string text = value.toString().toStdString();
    if (text.empty()) {
        refuseStored();
    }
    return text;
}

QJsonArray listIn(const QJsonValue& value)
{
    if (!value.isArray()) {
        refuseStored();
    }
    return value.toArray();
}

QJsonObject objectIn(const QJsonValue& value)
{
    if (!value.isObject()) {
        refuseStored();
    }
    return value.toObject();
}

template <class Choice, class Words>
std::optional<Choice> choiceIn(const Words& words, const QJsonValue& value)
{
    if (isSilent(value)) {
        return std::nullopt;
    }
    for (const auto& [choice, word] : words) {
        if (value.toString() == QLatin1String(word)) {
            return choice;
        }
    }
    refuseStored();
}

std::optional<char> signIn(const QJsonValue& value)
{
    if (isSilent(value)) {
        return std::nullopt;
    }
    const std::string sign = textIn(value);
    if (sign.size() != 1) {
        refuseStored();
    }
    return sign.front();
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
    mapping.name = textIn(object[QStringLiteral("name")]);
    mapping.separator = signIn(object[QStringLiteral("separator")]);
    mapping.dateOrder = choiceIn<DateOrder>(orderWords, object[QStringLiteral("date_order")]);
    mapping.durationForm =
        choiceIn<DurationForm>(formWords, object[QStringLiteral("duration_form")]);
    const QJsonArray columns = listIn(object[QStringLiteral("columns")]);
    for (const auto& value : columns) {
        const QJsonObject column = objectIn(value);
        const QJsonValue heading = column[QStringLiteral("heading")];
        const auto meaning = columnNamed(textIn(column[QStringLiteral("holds")]));
        if (!heading.isString() || !meaning) {
            refuseStored();
        }
        mapping.columns.emplace_back(heading.toString().toStdString(), *meaning);
    }
    return mapping;
}

} // namespace

RememberedMappings diaryMappings(Reading& reading)
{
    RememberedMappings remembered;
    const auto preference = practicePreference(reading, preferenceName);
    if (!preference) {
        return remembered;
    }
    remembered.version = preference->version;
    const QJsonDocument document =
        QJsonDocument::fromJson(QByteArray::fromStdString(preference->value));
    if (!document.isArray()) {
        refuseStored();
    }
    const QJsonArray stored = document.array();
    for (const auto& value : stored) {
        remembered.mappings.push_back(mappingFrom(objectIn(value)));
    }
    std::ranges::sort(remembered.mappings, {}, &DiaryMapping::name);
    return remembered;
}

void saveDiaryMapping(Writing& writing, const DiaryMapping& mapping, Version read)
{
    std::vector<DiaryMapping> mappings = diaryMappings(writing).mappings;
    std::erase_if(mappings, [&](const DiaryMapping& known) { return known.name == mapping.name; });
    mappings.push_back(mapping);
    std::ranges::sort(mappings, {}, &DiaryMapping::name);
    QJsonArray stored;
    for (const DiaryMapping& known : mappings) {
        stored.append(jsonOf(known));
    }
    setPracticePreference(writing, preferenceName,
                          QJsonDocument(stored).toJson(QJsonDocument::Compact).toStdString(), read);
}

} // namespace quadrille::db
