// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/codec.h"

#include "db/failure.h"

#include <QUtf8StringView>

#include <limits>

namespace quadrille::db
{

Value valueOf(const std::string& text)
{
    if (text.size() > longestText) {
        throw Failure({.code = ErrorCode::badFormat,
                       .subject = "The text",
                       .detail = "it is longer than what is kept, shorten it"});
    }
    if (text.find('\0') != std::string::npos || !QUtf8StringView(text).isValidUtf8()) {
        throw Failure({.code = ErrorCode::badFormat,
                       .subject = "The text",
                       .detail = "it holds characters that can't be kept"});
    }
    return text;
}

Value valueOf(Date date)
{
    return isoDate(date);
}

Value valueOf(Moment moment)
{
    return isoMoment(moment);
}

bool takeFlag(Statement& row)
{
    return row.takeInteger() != 0;
}

int takeInt(Statement& row)
{
    const std::int64_t number = row.takeInteger();
    if (number < std::numeric_limits<int>::min() || number > std::numeric_limits<int>::max()) {
        failOnWord(std::to_string(number));
    }
    return static_cast<int>(number);
}

Date takeDate(Statement& row)
{
    const std::string text = row.takeText();
    const auto date = dateFromIso(text);
    if (!date) {
        failOnWord(text);
    }
    return *date;
}

std::optional<Date> takeOptionalDate(Statement& row)
{
    const auto text = row.takeOptionalText();
    if (!text) {
        return std::nullopt;
    }
    const auto date = dateFromIso(*text);
    if (!date) {
        failOnWord(*text);
    }
    return date;
}

std::optional<int> takeOptionalInt(Statement& row)
{
    const auto number = row.takeOptionalInteger();
    if (number &&
        (*number < std::numeric_limits<int>::min() || *number > std::numeric_limits<int>::max())) {
        failOnWord(std::to_string(*number));
    }
    return number ? std::optional(static_cast<int>(*number)) : std::nullopt;
}

Moment takeMoment(Statement& row)
{
    const std::string text = row.takeText();
    const auto moment = momentFromIso(text);
    if (!moment) {
        failOnWord(text);
    }
    return *moment;
}

Milliseconds takeMilliseconds(Statement& row)
{
    return Milliseconds(row.takeInteger());
}

void failOnWord(const std::string& word)
{
    throw Failure({.code = ErrorCode::storeDamaged, .subject = word, .detail = "unreadable value"});
}

QString momentInFileName(Moment moment)
{
    QString text = QString::fromStdString(isoMoment(moment));
    return text.remove(QLatin1Char(':')).remove(QLatin1Char('-'));
}

} // namespace quadrille::db
