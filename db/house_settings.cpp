// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/house_settings.h"

#include "db/block_rows.h"
#include "db/codec.h"
#include "db/failure.h"
#include "db/versions.h"

#include <string>

namespace quadrille::db
{

namespace
{

constexpr std::string_view kind = "house_settings";

Columns wordsOf(const HouseSettings& kept)
{
    return {{"name", valueOf(kept.name)},
            {"muscle", valueOf(kept.muscle)},
            {"condition", valueOf(kept.condition)},
            {"note", valueOf(kept.note)},
            {"withdrawn", valueOf(kept.withdrawn)}};
}

Columns figuresOf(const HouseSettings& kept)
{
    Columns columns{{"ramp_habit", valueOf(kept.rampHabit)},
                    {"sessions_per_day", valueOf(kept.sessionsPerDay)},
                    {"days_per_week", valueOf(kept.daysPerWeek)},
                    {"weeks", valueOf(kept.weeks)}};
    append(columns, columnsOf(kept.settings));
    std::erase_if(columns, [](const Column& column) {
        return column.name == "last_tolerated_amplitude_ua" ||
               column.name == "amplitude_ceiling_ua";
    });
    return columns;
}

void requireNamed(const Connection& connection, const HouseSettings& kept)
{
    requireFilled(kept.name, Field::name);
    const auto holder =
        numberFrom(connection, "SELECT id FROM house_settings WHERE name = ? AND withdrawn = 0",
                   {valueOf(kept.name)});
    const bool isOwn = kept.id && holder == kept.id->key();
    if (holder && !isOwn && !kept.withdrawn) {
        throw Failure({.code = ErrorCode::notUnique,
                       .subject = kept.name,
                       .detail = {},
                       .field = Field::name});
    }
}

/// What is written, in the same order, and no amplitude, which takeSettings() asks for last.
std::string readColumns()
{
    const HouseSettings any = {};
    Columns columns = wordsOf(any);
    append(columns, figuresOf(any));
    std::string list = "id, version";
    for (const Column& column : columns) {
        list.append(", ").append(column.name);
    }
    return list + ", NULL, NULL";
}

std::vector<HouseSettings> houseSettingsWhere(Reading& reading, const std::string& condition,
                                              const std::vector<Value>& values = {})
{
    std::vector<HouseSettings> all;
    Statement rows(reading.connection(), "SELECT " + readColumns() + " FROM house_settings WHERE " +
                                             condition + " ORDER BY name, id");
    rows.bind(values);
    while (rows.next()) {
        HouseSettings& kept = all.emplace_back();
        kept.id = takeId<HouseSettings>(rows);
        kept.version = takeInt(rows);
        kept.name = rows.takeText();
        kept.muscle = rows.takeText();
        kept.condition = rows.takeText();
        kept.note = rows.takeText();
        kept.withdrawn = takeFlag(rows);
        kept.rampHabit = takeChoice<RampHabit>(rows);
        kept.sessionsPerDay = takeInt(rows);
        kept.daysPerWeek = takeInt(rows);
        kept.weeks = takeInt(rows);
        kept.settings = takeSettings(rows);
    }
    return all;
}

} // namespace

std::vector<HouseSettings> houseSettings(Reading& reading)
{
    return houseSettingsWhere(reading, "withdrawn = 0");
}

HouseSettingsId addHouseSettings(Writing& writing, const HouseSettings& kept)
{
    HouseSettings added = kept;
    added.id.reset();
    requireNamed(writing.connection(), added);
    requirePossible(added.settings);
    Columns columns = wordsOf(added);
    append(columns, figuresOf(added));
    return HouseSettingsId(addRecord(writing, {.kind = kind}, columns));
}

void changeHouseSettings(Writing& writing, const HouseSettings& kept)
{
    const auto stored = houseSettingsWhere(writing, "id = ?", {valueOf(kept.id)});
    if (!kept.id || stored.empty()) {
        throw Failure({.code = ErrorCode::notFound, .subject = kept.name, .detail = {}});
    }
    requireNamed(writing.connection(), kept);
    const HouseSettings& before = stored.front();
    if (figuresOf(kept) != figuresOf(before)) {
        throw Failure({.code = ErrorCode::refused,
                       .subject = kept.name,
                       .detail = "the figures of house settings are never changed"});
    }
    saveOver(writing, {.kind = kind, .id = kept.id->key()}, kept.version, wordsOf(before),
             wordsOf(kept));
}

} // namespace quadrille::db
