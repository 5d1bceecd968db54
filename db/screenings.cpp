// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/screenings.h"

#include "db/course_parts.h"

namespace quadrille::db
{

template <>
struct Kind<Screening> {
    static constexpr const char* table = "screening";
    static constexpr const char* columns =
        "id, course, number, questions_version, signed_on, signed_by, signed_by_name, version";
    static constexpr const char* order = "number";
    static Screening take(Statement& row)
    {
        Screening screening;
        screening.id = takeId<Screening>(row);
        screening.course = takeId<Course>(row);
        screening.number = takeInt(row);
        screening.questionsVersion = takeInt(row);
        screening.signedOn = takeOptionalDate(row);
        screening.signedBy = takeOptionalId<Practitioner>(row);
        screening.signedByName = row.takeText();
        screening.version = takeInt(row);
        return screening;
    }
    static Columns columnsOf(const Screening& screening)
    {
        return {{"questions_version", valueOf(screening.questionsVersion)}};
    }
};

namespace
{

std::vector<ScreeningAnswer> answersOf(const Connection& connection, ScreeningId screening)
{
    std::vector<ScreeningAnswer> answers;
    Statement rows(connection, "SELECT question, answer, note FROM screening_answer "
                               "WHERE screening = ? ORDER BY question");
    rows.bind({valueOf(screening)});
    while (rows.next()) {
        ScreeningAnswer& answer = answers.emplace_back();
        answer.question = rows.takeText();
        answer.answer = takeChoice<Answer>(rows);
        answer.note = rows.takeText();
    }
    return answers;
}

void addAnswers(const Connection& connection, std::int64_t screening,
                const std::vector<ScreeningAnswer>& answers)
{
    for (const ScreeningAnswer& answer : answers) {
        insertPart(connection, "screening_answer",
                   {{"screening", valueOf(screening)},
                    {"question", valueOf(answer.question)},
                    {"answer", valueOf(answer.answer)},
                    {"note", valueOf(answer.note)}});
    }
}

Columns allColumnsOf(const Screening& screening)
{
    Columns columns = Kind<Screening>::columnsOf(screening);
    for (const ScreeningAnswer& answer : screening.answers) {
        append(columns, under("answers." + answer.question, {{"answer", valueOf(answer.answer)},
                                                             {"note", valueOf(answer.note)}}));
    }
    return columns;
}

Screening storedScreening(Writing& writing, ScreeningId id)
{
    auto stored = partsWhere<Screening>(writing, "id = ?", valueOf(id));
    if (stored.empty()) {
        throw Failure({.code = ErrorCode::notFound, .subject = "screening", .detail = {}});
    }
    stored.front().answers = answersOf(writing.connection(), id);
    return std::move(stored.front());
}

} // namespace

std::vector<Screening> screeningsOf(Reading& reading, CourseId course)
{
    auto screenings = partsOf<Screening>(reading, course);
    for (Screening& screening : screenings) {
        screening.answers = answersOf(reading.connection(), *screening.id);
    }
    return screenings;
}

ScreeningId addScreening(Writing& writing, const Screening& screening)
{
    const auto last =
        numberFrom(writing.connection(), "SELECT max(number) FROM screening WHERE course = ?",
                   {valueOf(screening.course)});
    const ScreeningId id = addPart(writing, screening, {{"number", valueOf(last.value_or(0) + 1)}});
    addAnswers(writing.connection(), id.key(), screening.answers);
    return id;
}

void changeScreening(Writing& writing, const Screening& screening)
{
    if (!screening.id) {
        throw Failure({.code = ErrorCode::notFound, .subject = "screening", .detail = {}});
    }
    const Screening whole = storedScreening(writing, *screening.id);
    if (allColumnsOf(whole) == allColumnsOf(screening)) {
        return;
    }
    const Record record = recordOf(writing, screening);
    raiseVersion(writing, record, screening.version);
    updateRow(writing.connection(), record.kind, record.id, Kind<Screening>::columnsOf(screening));
    Statement(writing.connection(), "DELETE FROM screening_answer WHERE screening = ?")
        .bind({record.id})
        .run();
    addAnswers(writing.connection(), record.id, screening.answers);
    recordChanged(writing, record, allColumnsOf(whole), allColumnsOf(screening));
}

void signScreening(Writing& writing, ScreeningId id, Version read, PractitionerId practitioner,
                   Date day)
{
    const Screening before = storedScreening(writing, id);
    const Columns unsignedColumns{
        {"signed_on", Value()}, {"signed_by", Value()}, {"signed_by_name", std::string()}};
    const Columns signature{
        {"signed_on", valueOf(day)},
        {"signed_by", valueOf(practitioner)},
        {"signed_by_name", valueOf(nameOfPractitioner(writing.connection(), practitioner))}};
    saveOver(writing, recordOf(writing, before), read, unsignedColumns, signature);
}

std::vector<ScreeningOverride> overridesOf(Reading& reading, ScreeningId screening)
{
    std::vector<ScreeningOverride> reasons;
    Statement rows(reading.connection(),
                   "SELECT id, screening, question, practitioner, practitioner_name, reason, "
                   "made_at FROM screening_override WHERE screening = ? ORDER BY id");
    rows.bind({valueOf(screening)});
    while (rows.next()) {
        ScreeningOverride& reason = reasons.emplace_back();
        reason.id = takeId<ScreeningOverride>(rows);
        reason.screening = takeId<Screening>(rows);
        reason.question = rows.takeText();
        reason.practitioner = takeId<Practitioner>(rows);
        reason.practitionerName = rows.takeText();
        reason.reason = rows.takeText();
        reason.madeAt = takeMoment(rows);
    }
    return reasons;
}

ScreeningOverrideId addOverride(Writing& writing, const ScreeningOverride& reason)
{
    requireFilled(reason.reason, Field::reason);
    if (!reason.screening || !reason.practitioner) {
        throw Failure({.code = ErrorCode::notFilled,
                       .subject = {},
                       .detail = {},
                       .field = Field::practitioner});
    }
    const Screening screening = storedScreening(writing, *reason.screening);
    const std::string name = nameOfPractitioner(writing.connection(), *reason.practitioner);
    return ScreeningOverrideId(
        addRecord(writing,
                  {.kind = "screening_override",
                   .id = 0,
                   .patient = patientOf(writing.connection(), *screening.course)},
                  {{"screening", valueOf(reason.screening)},
                   {"question", valueOf(reason.question)},
                   {"practitioner", valueOf(reason.practitioner)},
                   {"practitioner_name", valueOf(name)},
                   {"reason", valueOf(reason.reason)},
                   {"made_at", valueOf(writing.moment())}}));
}

} // namespace quadrille::db
