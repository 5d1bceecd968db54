// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/stimulators.h"

#include "db/change_record.h"
#include "db/codec.h"
#include "db/failure.h"
#include "db/stimulator_rows.h"
#include "db/versions.h"

namespace quadrille::db
{

namespace
{

constexpr std::string_view kind = "stimulator";

/// The store keeps no unit that core says makes no sense.
void requireSensible(const Stimulator& stimulator)
{
    for (const Finding& finding : checkStimulator(stimulator)) {
        if (finding.severity != Severity::stop) {
            continue;
        }
        Error error{.code = finding.code == FindingCode::notFilled ? ErrorCode::notFilled
                                                                   : ErrorCode::outOfRange,
                    .subject = stimulator.name,
                    .detail = {},
                    .field = finding.field};
        const CountRange bounds = arithmeticBounds(finding.field);
        if (finding.field == Field::channels) {
            error.figures = {countOf(stimulator.channels), countOf(1), countOf(8)};
        } else if (bounds == CountRange{} && finding.figure) {
            error.figures = {*finding.figure, *finding.limit};
        } else if (finding.figure) {
            error.figures = {*finding.figure, amountIn(finding.field, bounds.least),
                             amountIn(finding.field, bounds.most)};
        }
        throw Failure(error);
    }
}

void requireFreeName(const Connection& connection, const Stimulator& stimulator)
{
    const auto holder = numberFrom(
        connection, "SELECT id FROM stimulator WHERE name = ? AND copy_of IS NULL AND archived = 0",
        {valueOf(stimulator.name)});
    const bool isOwn = stimulator.id && holder == stimulator.id->key();
    if (!stimulator.archived && holder && !isOwn) {
        throw Failure({.code = ErrorCode::notUnique,
                       .subject = stimulator.name,
                       .detail = {},
                       .field = Field::name});
    }
}

} // namespace

std::vector<Stimulator> stimulators(Reading& reading)
{
    std::vector<Stimulator> units;
    for (StoredStimulator& stored :
         stimulatorsWhere(reading.connection(), "stimulator.copy_of IS NULL")) {
        units.push_back(std::move(stored.stimulator));
    }
    return units;
}

std::optional<Stimulator> stimulator(Reading& reading, StimulatorId id)
{
    const auto stored = stimulatorsWhere(
        reading.connection(), "stimulator.copy_of IS NULL AND stimulator.id = ?", {valueOf(id)});
    return stored.empty() ? std::nullopt : std::optional(stored.front().stimulator);
}

StimulatorId addStimulator(Writing& writing, const Stimulator& stimulator)
{
    Stimulator added = stimulator;
    added.id.reset();
    requireSensible(added);
    requireFreeName(writing.connection(), added);
    const std::int64_t key = addStimulatorRows(writing.connection(), added);
    recordCreated(writing, {.kind = kind, .id = key});
    return StimulatorId(key);
}

void changeStimulator(Writing& writing, const Stimulator& changed)
{
    const auto before = changed.id ? stimulator(writing, *changed.id) : std::nullopt;
    if (!before) {
        throw Failure({.code = ErrorCode::notFound, .subject = changed.name, .detail = {}});
    }
    requireSensible(changed);
    requireFreeName(writing.connection(), changed);
    if (columnsOf(changed) == columnsOf(*before)) {
        return;
    }
    const Record record{.kind = kind, .id = changed.id->key()};
    raiseVersion(writing, record, changed.version);
    changeStimulatorRows(writing.connection(), changed.id->key(), changed);
    recordChanged(writing, record, columnsOf(*before), columnsOf(changed));
}

} // namespace quadrille::db
