// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/measurements.h"

#include "db/course_parts.h"

#include <algorithm>
#include <map>

namespace quadrille::db
{

template <>
struct Kind<Measurement> {
    static constexpr const char* table = "measurement";
    static constexpr const char* columns =
        "id, course, follow_up, measured_on, kind, subject, side, value_thousandths, unit, method, "
        "device, counted, recorded_by_name, withdrawn, version";
    static constexpr const char* order = "measured_on, id";
    static Measurement take(Statement& row)
    {
        Measurement measurement;
        measurement.id = takeId<Measurement>(row);
        measurement.course = takeId<Course>(row);
        measurement.followUp = takeOptionalId<FollowUp>(row);
        measurement.measuredOn = takeDate(row);
        measurement.kind = row.takeText();
        measurement.subject = row.takeText();
        measurement.side = takeChoice<Side>(row);
        measurement.thousandths = row.takeInteger();
        measurement.unit = row.takeText();
        measurement.method = row.takeText();
        measurement.device = row.takeText();
        measurement.counted = takeChoice<Counted>(row);
        measurement.recordedByName = row.takeText();
        measurement.withdrawn = takeFlag(row);
        measurement.version = takeInt(row);
        return measurement;
    }
    static Columns columnsOf(const Measurement& measurement)
    {
        return {{"follow_up", valueOf(measurement.followUp)},
                {"measured_on", valueOf(measurement.measuredOn)},
                {"kind", valueOf(measurement.kind)},
                {"subject", valueOf(measurement.subject)},
                {"side", valueOf(measurement.side)},
                {"value_thousandths", valueOf(measurement.thousandths)},
                {"unit", valueOf(measurement.unit)},
                {"method", valueOf(measurement.method)},
                {"device", valueOf(measurement.device)},
                {"counted", valueOf(measurement.counted)},
                {"withdrawn", valueOf(measurement.withdrawn)}};
    }
};

namespace
{

void addTrials(const Connection& connection, std::int64_t measurement,
               const std::vector<std::int64_t>& trials)
{
    for (std::size_t i = 0; i < trials.size(); ++i) {
        insertPart(connection, "measurement_trial",
                   {{"measurement", measurement},
                    {"ordinal", valueOf(static_cast<int>(i) + 1)},
                    {"value_thousandths", trials[i]}});
    }
}

std::vector<std::int64_t> trialsOf(const Connection& connection, MeasurementId id)
{
    std::vector<std::int64_t> trials;
    Statement rows(connection, "SELECT value_thousandths FROM measurement_trial "
                               "WHERE measurement = ? ORDER BY ordinal");
    rows.bind({valueOf(id)});
    while (rows.next()) {
        trials.push_back(rows.takeInteger());
    }
    return trials;
}

Columns allColumnsOf(const Measurement& measurement)
{
    Columns columns = Kind<Measurement>::columnsOf(measurement);
    for (std::size_t i = 0; i < measurement.trials.size(); ++i) {
        columns.push_back({"trials." + std::to_string(i + 1), measurement.trials[i]});
    }
    return columns;
}

/// The value is what its trials make of it; the best is either end where neither is better.
void requireTrialsThatCount(const Measurement& measurement)
{
    const MeasurementKind* const kind = measurementKind(measurement.kind);
    const Better better = kind == nullptr ? Better::neither : kind->better;
    const auto makes = [&](Better end) {
        return (better == Better::neither || better == end) &&
               valueOfTrials(measurement.counted, end, measurement.trials) ==
                   measurement.thousandths;
    };
    const bool none = measurement.counted == Counted::one && measurement.trials.empty();
    if (!none && !makes(Better::higher) && !makes(Better::lower)) {
        throw Failure({.code = ErrorCode::refused,
                       .subject = "measurement",
                       .detail = "the value is not what its trials make"});
    }
}

} // namespace

std::vector<Measurement> measurementsOf(Reading& reading, CourseId course)
{
    auto all = partsOf<Measurement>(reading, course);
    std::map<std::int64_t, Measurement*> byKey;
    for (Measurement& measurement : all) {
        byKey[measurement.id->key()] = &measurement;
    }
    Statement rows(
        reading.connection(),
        "SELECT measurement, value_thousandths FROM measurement_trial WHERE measurement "
        "IN (SELECT id FROM measurement WHERE course = ?) ORDER BY measurement, ordinal");
    rows.bind({valueOf(course)});
    while (rows.next()) {
        Measurement& measurement = *byKey.at(rows.takeInteger());
        measurement.trials.push_back(rows.takeInteger());
    }
    return all;
}

MeasurementId addMeasurement(Writing& writing, const Measurement& measurement)
{
    requireTrialsThatCount(measurement);
    const MeasurementId id = addPart(writing, measurement, writerColumns(writing, "recorded_by"));
    addTrials(writing.connection(), id.key(), measurement.trials);
    return id;
}

void changeMeasurement(Writing& writing, const Measurement& measurement)
{
    requireTrialsThatCount(measurement);
    Measurement before = storedPart(writing, measurement);
    before.trials = trialsOf(writing.connection(), *before.id);
    if (allColumnsOf(before) == allColumnsOf(measurement)) {
        return;
    }
    const Record record = recordOf(writing, measurement);
    raiseVersion(writing, record, measurement.version);
    updateRow(writing.connection(), record.kind, record.id,
              Kind<Measurement>::columnsOf(measurement));
    Statement(writing.connection(), "DELETE FROM measurement_trial WHERE measurement = ?")
        .bind({record.id})
        .run();
    addTrials(writing.connection(), record.id, measurement.trials);
    recordChanged(writing, record, allColumnsOf(before), allColumnsOf(measurement));
}

std::vector<OwnKind> ownKinds(Reading& reading)
{
    std::vector<OwnKind> kinds;
    // With max(), SQLite takes the other columns from the row that has it.
    Statement rows(reading.connection(),
                   "SELECT subject, unit, side <> 'middle', max(id) FROM measurement "
                   "WHERE kind = 'own' AND withdrawn = 0 GROUP BY subject ORDER BY subject");
    while (rows.next()) {
        OwnKind kind;
        kind.name = rows.takeText();
        kind.unit = rows.takeText();
        kind.hasSides = takeFlag(rows);
        kinds.push_back(kind);
    }
    return kinds;
}

} // namespace quadrille::db
