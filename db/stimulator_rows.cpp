// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/stimulator_rows.h"

#include "db/codec.h"
#include "db/failure.h"

#include <array>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <utility>

namespace quadrille::db
{

namespace
{

struct NamedRange {
    Field field;
    std::string_view name;
    bool optional;
};
// Both amplitude fields share one range.
constexpr std::array namedRanges{
    NamedRange{Field::pulseFrequency, "pulse_frequency", false},
    NamedRange{Field::phaseDuration, "phase_duration", false},
    NamedRange{Field::interphaseGap, "interphase_gap", true},
    NamedRange{Field::secondPhaseDuration, "second_phase_duration", true},
    NamedRange{Field::carrierFrequency, "carrier_frequency", true},
    NamedRange{Field::burstDuty, "burst_duty", true},
    NamedRange{Field::lastToleratedAmplitude, "amplitude", false},
    NamedRange{Field::onTime, "on_time", false},
    NamedRange{Field::offTime, "off_time", false},
    NamedRange{Field::rampUp, "ramp_up", false},
    NamedRange{Field::rampDown, "ramp_down", false},
    NamedRange{Field::sessionLength, "session_length", false},
};

Columns ownColumns(const Stimulator& stimulator)
{
    return {
        {"name", valueOf(stimulator.name)},
        {"channels", valueOf(stimulator.channels)},
        {"channels_share_timing", valueOf(stimulator.channelsShareTiming)},
        {"has_work_rest_cycles", valueOf(stimulator.hasWorkRestCycles)},
        {"ramp_habit", valueOf(stimulator.rampHabit)},
        {"cycle_start", valueOf(stimulator.cycleStart)},
        {"usage_counter", valueOf(stimulator.usageCounter)},
        {"memories", valueOf(stimulator.memories)},
        {"most_output_ua", valueOf(stimulator.mostOutput)},
        {"archived", valueOf(stimulator.archived)},
    };
}

Columns columnsOf(const CountRange& range)
{
    return {{"least", valueOf(range.least)},
            {"most", valueOf(range.most)},
            {"step", valueOf(range.step)},
            {"preset", valueOf(range.preset)}};
}

void addParts(const Connection& connection, std::int64_t key, const Stimulator& stimulator)
{
    int ordinal = 0;
    for (const Waveform waveform : stimulator.waveforms) {
        insertPart(connection, "stimulator_waveform",
                   {{"stimulator", valueOf(key)},
                    {"ordinal", valueOf(++ordinal)},
                    {"waveform", valueOf(waveform)}});
    }
    for (const NamedRange& named : namedRanges) {
        if (const auto range = rangeOf(stimulator, named.field)) {
            Columns columns{{"stimulator", valueOf(key)}, {"field", std::string(named.name)}};
            append(columns, columnsOf(*range));
            insertPart(connection, "stimulator_range", columns);
        }
    }
    ordinal = 0;
    for (const Field field : stimulator.askingOrder) {
        insertPart(connection, "stimulator_asking_order",
                   {{"stimulator", valueOf(key)},
                    {"ordinal", valueOf(++ordinal)},
                    {"field", valueOf(field)}});
    }
    for (const auto& [field, word] : stimulator.ownWords) {
        insertPart(
            connection, "stimulator_own_word",
            {{"stimulator", valueOf(key)}, {"field", valueOf(field)}, {"word", valueOf(word)}});
    }
}

/// The units themselves, their parts still empty.
std::vector<StoredStimulator> readUnits(const Connection& connection, std::string_view condition,
                                        const std::vector<Value>& values)
{
    std::vector<StoredStimulator> units;
    Statement rows(connection,
                   "SELECT id, COALESCE(copy_of, id), name, channels, channels_share_timing, "
                   "has_work_rest_cycles, ramp_habit, cycle_start, usage_counter, memories, "
                   "most_output_ua, archived, version FROM stimulator WHERE " +
                       std::string(condition) + " ORDER BY archived, lower(name), name, id");
    rows.bind(values);
    while (rows.next()) {
        StoredStimulator& unit = units.emplace_back();
        unit.key = rows.takeInteger();
        unit.stimulator.id = takeId<Stimulator>(rows);
        unit.stimulator.name = rows.takeText();
        unit.stimulator.channels = takeInt(rows);
        unit.stimulator.channelsShareTiming = takeFlag(rows);
        unit.stimulator.hasWorkRestCycles = takeFlag(rows);
        unit.stimulator.rampHabit = takeChoice<RampHabit>(rows);
        unit.stimulator.cycleStart = takeChoice<CycleStart>(rows);
        unit.stimulator.usageCounter = takeChoice<UsageCounter>(rows);
        unit.stimulator.memories = takeInt(rows);
        unit.stimulator.mostOutput = takeOptionalQuantity<Amplitude>(rows);
        unit.stimulator.archived = takeFlag(rows);
        unit.stimulator.version = takeInt(rows);
    }
    return units;
}

/// Reads one kind of part of many units; `take` adds the row to its unit.
void readParts(const Connection& connection, const std::string& select, std::string_view condition,
               const std::vector<Value>& values,
               const std::function<void(std::int64_t, Statement&)>& take)
{
    Statement rows(connection, select +
                                   " JOIN stimulator ON stimulator.id = part.stimulator WHERE " +
                                   std::string(condition) + " ORDER BY 1, 2");
    rows.bind(values);
    while (rows.next()) {
        take(rows.takeInteger(), rows);
    }
}

void takeRange(Stimulator& stimulator, std::set<std::string_view>& found, Statement& row)
{
    const std::string name = row.takeText();
    for (const NamedRange& named : namedRanges) {
        if (named.name == name) {
            CountRange range;
            range.least = row.takeInteger();
            range.most = row.takeInteger();
            range.step = row.takeInteger();
            range.preset = row.takeInteger();
            setRange(stimulator, named.field, range);
            found.insert(named.name);
        }
    }
}

void requireAllRanges(const Stimulator& stimulator, const std::set<std::string_view>& found)
{
    for (const NamedRange& named : namedRanges) {
        if (!named.optional && !found.contains(named.name)) {
            throw Failure({.code = ErrorCode::storeDamaged,
                           .subject = stimulator.name,
                           .detail = "no range of " + std::string(named.name)});
        }
    }
}

std::int64_t insertStimulator(const Connection& connection, const Stimulator& stimulator,
                              const std::optional<StimulatorId>& copyOf)
{
    Columns columns = ownColumns(stimulator);
    append(columns, {{"copy_of", valueOf(copyOf)}, {"sealed", valueOf(false)}});
    const std::int64_t key = insertRow(connection, "stimulator", columns);
    addParts(connection, key, stimulator);
    return key;
}

} // namespace

std::vector<StoredStimulator> stimulatorsWhere(const Connection& connection,
                                               std::string_view condition,
                                               const std::vector<Value>& values)
{
    std::vector<StoredStimulator> units = readUnits(connection, condition, values);
    std::map<std::int64_t, Stimulator*> byKey;
    for (StoredStimulator& unit : units) {
        byKey[unit.key] = &unit.stimulator;
    }
    readParts(connection,
              "SELECT part.stimulator, part.ordinal, part.waveform FROM stimulator_waveform part",
              condition, values, [&](std::int64_t key, Statement& row) {
                  row.takeInteger();
                  byKey.at(key)->waveforms.push_back(takeChoice<Waveform>(row));
              });
    readParts(connection,
              "SELECT part.stimulator, part.ordinal, part.field FROM stimulator_asking_order part",
              condition, values, [&](std::int64_t key, Statement& row) {
                  row.takeInteger();
                  byKey.at(key)->askingOrder.push_back(takeChoice<Field>(row));
              });
    readParts(connection,
              "SELECT part.stimulator, part.field, part.word FROM stimulator_own_word part",
              condition, values, [&](std::int64_t key, Statement& row) {
                  const Field field = takeChoice<Field>(row);
                  byKey.at(key)->ownWords[field] = row.takeText();
              });
    std::map<std::int64_t, std::set<std::string_view>> ranges;
    readParts(connection,
              "SELECT part.stimulator, part.field, part.least, part.most, part.step, part.preset "
              "FROM stimulator_range part",
              condition, values, [&](std::int64_t key, Statement& row) {
                  takeRange(*byKey.at(key), ranges[key], row);
              });
    for (const StoredStimulator& unit : units) {
        requireAllRanges(unit.stimulator, ranges[unit.key]);
    }
    return units;
}

std::int64_t addStimulatorRows(const Connection& connection, const Stimulator& stimulator)
{
    return insertStimulator(connection, stimulator, std::nullopt);
}

void changeStimulatorRows(const Connection& connection, std::int64_t key,
                          const Stimulator& stimulator)
{
    updateRow(connection, "stimulator", key, ownColumns(stimulator));
    for (const char* part : {"stimulator_waveform", "stimulator_range", "stimulator_asking_order",
                             "stimulator_own_word"}) {
        Statement(connection, std::string("DELETE FROM ") + part + " WHERE stimulator = ?")
            .bind({key})
            .run();
    }
    addParts(connection, key, stimulator);
}

std::int64_t sealedCopyOf(const Connection& connection, const Stimulator& stimulator)
{
    const auto last = stimulatorsWhere(
        connection,
        "stimulator.id = (SELECT max(copy.id) FROM stimulator copy WHERE copy.copy_of = ?)",
        {valueOf(stimulator.id)});
    if (!last.empty()) {
        Stimulator copy = last.front().stimulator;
        copy.version = stimulator.version; // a copy has none of its own
        if (copy == stimulator) {
            return last.front().key;
        }
    }
    const std::int64_t key = insertStimulator(connection, stimulator, stimulator.id);
    updateRow(connection, "stimulator", key, {{"sealed", valueOf(true)}});
    return key;
}

Columns columnsOf(const Stimulator& stimulator)
{
    Columns columns = ownColumns(stimulator);
    for (std::size_t i = 0; i < stimulator.waveforms.size(); ++i) {
        columns.push_back({"waveforms." + std::to_string(i + 1), valueOf(stimulator.waveforms[i])});
    }
    for (const NamedRange& named : namedRanges) {
        if (const auto range = rangeOf(stimulator, named.field)) {
            append(columns, under("ranges." + std::string(named.name), columnsOf(*range)));
        }
    }
    for (std::size_t i = 0; i < stimulator.askingOrder.size(); ++i) {
        columns.push_back(
            {"asking_order." + std::to_string(i + 1), valueOf(stimulator.askingOrder[i])});
    }
    for (const auto& [field, word] : stimulator.ownWords) {
        columns.push_back({"own_words." + std::string(wordOf(field)), valueOf(word)});
    }
    return columns;
}

} // namespace quadrille::db
