// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/practice_preferences.h"

#include "db/codec.h"
#include "db/failure.h"
#include "db/versions.h"

#include <charconv>

namespace quadrille::db
{

std::optional<PracticePreference> practicePreference(Reading& reading, const std::string& name)
{
    Statement row(reading.connection(), "SELECT value, version FROM preference WHERE name = ?");
    row.bind({valueOf(name)});
    if (!row.next()) {
        return std::nullopt;
    }
    PracticePreference preference;
    preference.value = row.takeText();
    preference.version = takeInt(row);
    return preference;
}

std::optional<int> wholeNumberIn(const std::string& value, int least, int most)
{
    int number = 0;
    const char* const end = value.data() + value.size();
    const auto [read, error] = std::from_chars(value.data(), end, number);
    const bool isWhole = error == std::errc() && read == end;
    return isWhole && number >= least && number <= most ? std::optional(number) : std::nullopt;
}

std::optional<int> wholeNumberPreference(Reading& reading, const std::string& name, int least,
                                         int most)
{
    const auto preference = practicePreference(reading, name);
    if (!preference) {
        return std::nullopt;
    }
    const auto number = wholeNumberIn(preference->value, least, most);
    if (!number) {
        throw Failure({.code = ErrorCode::badFormat,
                       .subject = name,
                       .detail = "“" + preference->value + "” is no whole number from " +
                                 std::to_string(least) + " to " + std::to_string(most) +
                                 "; set it again"});
    }
    return number;
}

void setPracticePreference(Writing& writing, const std::string& name, const std::string& value,
                           Version read)
{
    const auto before = practicePreference(writing, name);
    if (!before) {
        if (read != 0) {
            throw Failure({.code = ErrorCode::notFound, .subject = name, .detail = {}});
        }
        addRecord(writing, {.kind = "preference"},
                  {{"name", valueOf(name)}, {"value", valueOf(value)}});
        return;
    }
    const auto id = numberFrom(writing.connection(), "SELECT id FROM preference WHERE name = ?",
                               {valueOf(name)});
    const Record record{.kind = "preference", .id = id.value_or(0)};
    if (before->value == value) {
        return;
    }
    raiseVersion(writing, record, read);
    updateRow(writing.connection(), record.kind, record.id, {{"value", valueOf(value)}});
    recordChanged(writing, record, {{name, valueOf(before->value)}}, {{name, valueOf(value)}});
}

} // namespace quadrille::db
