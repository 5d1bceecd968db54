// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/diary.h"

#include "db/course_parts.h"

#include <map>

namespace quadrille::db
{

template <>
struct Kind<DiaryEntry> {
    static constexpr const char* table = "diary_entry";
    static constexpr const char* columns =
        "id, course, day, session_number, duration_ms, contractions, comfort, source, entered_by, "
        "entered_by_name, entered_at, withdrawn, version";
    static constexpr const char* order = "day, session_number";
    static DiaryEntry take(Statement& row)
    {
        DiaryEntry entry;
        entry.id = takeId<DiaryEntry>(row);
        entry.course = takeId<Course>(row);
        entry.day = takeDate(row);
        entry.sessionNumber = takeInt(row);
        entry.duration = takeMilliseconds(row);
        entry.contractions = takeOptionalInt(row);
        entry.comfort = takeOptionalInt(row);
        entry.source = takeChoice<DiarySource>(row);
        entry.enteredBy = takeOptionalId<Practitioner>(row);
        entry.enteredByName = row.takeText();
        entry.enteredAt = takeMoment(row);
        entry.withdrawn = takeFlag(row);
        entry.version = takeInt(row);
        return entry;
    }
    static Columns columnsOf(const DiaryEntry& entry)
    {
        return {{"day", valueOf(entry.day)},
                {"session_number", valueOf(entry.sessionNumber)},
                {"duration_ms", valueOf(entry.duration)},
                {"contractions", valueOf(entry.contractions)},
                {"comfort", valueOf(entry.comfort)},
                {"source", valueOf(entry.source)},
                {"withdrawn", valueOf(entry.withdrawn)}};
    }
};

template <>
struct Kind<DiaryDay> {
    static constexpr const char* table = "diary_day";
    static constexpr const char* columns = "id, course, day, skin, skin_pad, remark, version";
    static constexpr const char* order = "day";
    static DiaryDay take(Statement& row)
    {
        DiaryDay day;
        day.id = takeId<DiaryDay>(row);
        day.course = takeId<Course>(row);
        day.day = takeDate(row);
        if (const auto skin = takeOptionalInt(row)) {
            day.skin = static_cast<Skin>(*skin);
        }
        day.skinPad = row.takeText();
        day.remark = row.takeText();
        day.version = takeInt(row);
        return day;
    }
    static Columns columnsOf(const DiaryDay& day)
    {
        return {{"day", valueOf(day.day)},
                {"skin", day.skin ? valueOf(static_cast<int>(*day.skin)) : Value()},
                {"skin_pad", valueOf(day.skinPad)},
                {"remark", valueOf(day.remark)}};
    }
};

namespace
{

template <class Part>
std::vector<Part> partsBetween(Reading& reading, CourseId course, Date from, Date to)
{
    std::vector<Part> parts;
    Statement rows(reading.connection(),
                   std::string("SELECT ") + Kind<Part>::columns + " FROM " + Kind<Part>::table +
                       " WHERE course = ? AND day BETWEEN ? AND ? ORDER BY " + Kind<Part>::order);
    rows.bind({valueOf(course), valueOf(from), valueOf(to)});
    while (rows.next()) {
        parts.push_back(Kind<Part>::take(rows));
    }
    return parts;
}

void addAmplitudes(const Connection& connection, std::int64_t entry,
                   const std::vector<SiteAmplitude>& amplitudes)
{
    for (const SiteAmplitude& amplitude : amplitudes) {
        insertPart(connection, "diary_amplitude",
                   {{"entry", valueOf(entry)},
                    {"site", valueOf(amplitude.site)},
                    {"amplitude_ua", valueOf(amplitude.amplitude)}});
    }
}

std::vector<SiteAmplitude> amplitudesOf(const Connection& connection, std::int64_t entry)
{
    std::vector<SiteAmplitude> amplitudes;
    Statement rows(connection,
                   "SELECT site, amplitude_ua FROM diary_amplitude WHERE entry = ? ORDER BY site");
    rows.bind({entry});
    while (rows.next()) {
        SiteAmplitude amplitude;
        amplitude.site = rows.takeInteger();
        amplitude.amplitude = takeQuantity<Amplitude>(rows);
        amplitudes.push_back(amplitude);
    }
    return amplitudes;
}

Columns allColumnsOf(const DiaryEntry& entry)
{
    Columns columns = Kind<DiaryEntry>::columnsOf(entry);
    for (const SiteAmplitude& amplitude : entry.amplitudes) {
        columns.push_back(
            {"amplitudes." + std::to_string(amplitude.site), valueOf(amplitude.amplitude)});
    }
    return columns;
}

void requireFreeSession(Reading& reading, const DiaryEntry& entry)
{
    const auto holder =
        numberFrom(reading.connection(),
                   "SELECT id FROM diary_entry WHERE course = ? AND day = ? AND session_number = ?",
                   {valueOf(entry.course), valueOf(entry.day), valueOf(entry.sessionNumber)});
    if (holder && (!entry.id || entry.id->key() != *holder)) {
        throw Failure({.code = ErrorCode::notUnique,
                       .subject = isoDate(entry.day) + ", " + std::to_string(entry.sessionNumber),
                       .detail = {}});
    }
}

} // namespace

std::vector<DiaryEntry> diaryEntriesOf(Reading& reading, CourseId course, Date from, Date to)
{
    auto entries = partsBetween<DiaryEntry>(reading, course, from, to);
    std::map<std::int64_t, DiaryEntry*> byKey;
    for (DiaryEntry& entry : entries) {
        byKey[entry.id->key()] = &entry;
    }
    Statement rows(reading.connection(),
                   "SELECT entry, site, amplitude_ua FROM diary_amplitude WHERE entry IN (SELECT "
                   "id FROM diary_entry WHERE course = ? AND day BETWEEN ? AND ?) "
                   "ORDER BY entry, site");
    rows.bind({valueOf(course), valueOf(from), valueOf(to)});
    while (rows.next()) {
        DiaryEntry& entry = *byKey.at(rows.takeInteger());
        SiteAmplitude amplitude;
        amplitude.site = rows.takeInteger();
        amplitude.amplitude = takeQuantity<Amplitude>(rows);
        entry.amplitudes.push_back(amplitude);
    }
    return entries;
}

DiaryEntryId addDiaryEntry(Writing& writing, const DiaryEntry& entry)
{
    DiaryEntry added = entry;
    added.id.reset();
    requireFreeSession(writing, added);
    Columns more = writerColumns(writing, "entered_by");
    more.push_back({"entered_at", valueOf(writing.moment())});
    const DiaryEntryId id = addPart(writing, added, more);
    addAmplitudes(writing.connection(), id.key(), added.amplitudes);
    return id;
}

void correctDiaryEntry(Writing& writing, const DiaryEntry& entry)
{
    DiaryEntry before = storedPart(writing, entry);
    before.amplitudes = amplitudesOf(writing.connection(), before.id->key());
    if (allColumnsOf(before) == allColumnsOf(entry)) {
        return;
    }
    requireFreeSession(writing, entry);
    const Record record = recordOf(writing, entry);
    raiseVersion(writing, record, entry.version);
    updateRow(writing.connection(), record.kind, record.id, Kind<DiaryEntry>::columnsOf(entry));
    Statement(writing.connection(), "DELETE FROM diary_amplitude WHERE entry = ?")
        .bind({record.id})
        .run();
    addAmplitudes(writing.connection(), record.id, entry.amplitudes);
    recordChanged(writing, record, allColumnsOf(before), allColumnsOf(entry));
}

std::vector<DiaryDay> diaryDaysOf(Reading& reading, CourseId course, Date from, Date to)
{
    return partsBetween<DiaryDay>(reading, course, from, to);
}

DiaryDayId saveDiaryDay(Writing& writing, const DiaryDay& day)
{
    if (!day.id) {
        return addPart(writing, day);
    }
    changePart(writing, day);
    return *day.id;
}

} // namespace quadrille::db
