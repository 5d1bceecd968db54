// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/screenings.h"

#include "db/codec.h"
#include "db/course_rows.h"
#include "db/failure.h"
#include "db/screening_rows.h"
#include "db/versions.h"

#include <algorithm>
#include <array>

namespace quadrille::db
{

namespace
{

Record recordOf(Writing& writing, const Screening& screening)
{
    if (!screening.course) {
        throw Failure({.code = ErrorCode::notFound, .subject = "course", .detail = {}});
    }
    return {.kind = "screening",
            .id = screening.id ? screening.id->key() : 0,
            .patient = patientOf(writing.connection(), *screening.course)};
}

std::string wordsOf(const std::vector<BodyRegion>& regions)
{
    std::string words;
    for (const BodyRegion region : regions) {
        words += words.empty() ? "" : " ";
        words += wordOf(region);
    }
    return words;
}

Columns columnsOf(const ScreeningQuestion& question)
{
    return {{"class", valueOf(question.questionClass)},
            {"reach", valueOf(question.reach)},
            {"regions", valueOf(wordsOf(question.regions))},
            {"wording", valueOf(question.wording)},
            {"advice", valueOf(question.advice)},
            {"advice_place", valueOf(question.adviceAt)}};
}

Columns columnsOf(const BodyPlace& place)
{
    return {{"region", valueOf(place.region)}, {"side", valueOf(place.side)}};
}

Columns columnsOf(const SkinTest& test)
{
    return {{"muscle", valueOf(test.muscle)},
            {"side", valueOf(test.side)},
            {"region", valueOf(test.region)},
            {"sharp_blunt", valueOf(test.sharpBlunt)},
            {"warm_cold", valueOf(test.warmCold)}};
}

/// What is stored, for the change record.
Columns allColumnsOf(const Screening& screening)
{
    Columns columns{{"questions_version", valueOf(screening.questionsVersion)},
                    {"skin_seen", valueOf(screening.skinSeen)}};
    for (std::size_t i = 0; i < screening.questions.size(); ++i) {
        const std::string path = "questions." + screening.questions[i].name;
        append(columns, under(path, columnsOf(screening.questions[i])));
        append(columns, under(path, {{"ordinal", valueOf(static_cast<int>(i) + 1)}}));
    }
    for (const ScreeningAnswer& answer : screening.answers) {
        const std::string path = "answers." + answer.question;
        append(columns,
               under(path, {{"answer", valueOf(answer.answer)}, {"note", valueOf(answer.note)}}));
        for (std::size_t i = 0; i < answer.places.size(); ++i) {
            append(columns,
                   under(path + ".places." + std::to_string(i + 1), columnsOf(answer.places[i])));
        }
    }
    for (std::size_t i = 0; i < screening.skin.size(); ++i) {
        append(columns, under("skin_tests." + std::to_string(i + 1), columnsOf(screening.skin[i])));
    }
    return columns;
}

void addParts(const Connection& connection, std::int64_t screening, const Screening& parts)
{
    const auto add = [&](const char* table, std::size_t place, Columns columns, Columns more = {}) {
        append(columns, std::move(more));
        columns.push_back({"screening", valueOf(screening)});
        if (place > 0) {
            columns.push_back({"ordinal", valueOf(static_cast<std::int64_t>(place))});
        }
        insertPart(connection, table, columns);
    };
    for (std::size_t i = 0; i < parts.questions.size(); ++i) {
        add("screening_question", i + 1, columnsOf(parts.questions[i]),
            {{"question", valueOf(parts.questions[i].name)}});
    }
    for (const ScreeningAnswer& answer : parts.answers) {
        add("screening_answer", 0,
            {{"question", valueOf(answer.question)},
             {"answer", valueOf(answer.answer)},
             {"note", valueOf(answer.note)}});
        for (std::size_t i = 0; i < answer.places.size(); ++i) {
            add("screening_place", i + 1, columnsOf(answer.places[i]),
                {{"question", valueOf(answer.question)}});
        }
    }
    for (std::size_t i = 0; i < parts.skin.size(); ++i) {
        add("skin_test", i + 1, columnsOf(parts.skin[i]));
    }
}

void removeParts(const Connection& connection, std::int64_t screening)
{
    for (const char* removal : std::array{"DELETE FROM skin_test WHERE screening = ?",
                                          "DELETE FROM screening_place WHERE screening = ?",
                                          "DELETE FROM screening_answer WHERE screening = ?",
                                          "DELETE FROM screening_question WHERE screening = ?"}) {
        Statement(connection, removal).bind({screening}).run();
    }
}

Screening storedScreening(Writing& writing, const std::optional<ScreeningId>& id)
{
    const auto course = id ? numberFrom(writing.connection(),
                                        "SELECT course FROM screening WHERE id = ?", {valueOf(*id)})
                           : std::nullopt;
    if (!course) {
        throw Failure({.code = ErrorCode::notFound, .subject = "screening", .detail = {}});
    }
    auto all = readScreenings(writing, CourseId(*course));
    return std::move(*std::ranges::find(all, id, &Screening::id));
}

} // namespace

std::vector<Screening> screeningsOf(Reading& reading, CourseId course)
{
    return readScreenings(reading, course);
}

std::optional<Screening> latestScreeningOf(Reading& reading, CourseId course)
{
    return readLatestScreening(reading, course);
}

ScreeningId addScreening(Writing& writing, const Screening& screening)
{
    const auto last =
        numberFrom(writing.connection(), "SELECT max(number) FROM screening WHERE course = ?",
                   {valueOf(screening.course)});
    const std::int64_t id = addRecord(writing, recordOf(writing, screening),
                                      {{"course", valueOf(screening.course)},
                                       {"number", valueOf(last.value_or(0) + 1)},
                                       {"questions_version", valueOf(screening.questionsVersion)},
                                       {"skin_seen", valueOf(screening.skinSeen)}});
    addParts(writing.connection(), id, screening);
    return ScreeningId(id);
}

void changeScreening(Writing& writing, const Screening& screening)
{
    const Screening before = storedScreening(writing, screening.id);
    if (allColumnsOf(before) == allColumnsOf(screening)) {
        return;
    }
    const Record record = recordOf(writing, screening);
    raiseVersion(writing, record, screening.version);
    updateRow(writing.connection(), record.kind, record.id,
              {{"questions_version", valueOf(screening.questionsVersion)},
               {"skin_seen", valueOf(screening.skinSeen)}});
    removeParts(writing.connection(), record.id);
    addParts(writing.connection(), record.id, screening);
    recordChanged(writing, record, allColumnsOf(before), allColumnsOf(screening));
}

void signScreening(Writing& writing, ScreeningId id, Version read, PractitionerId practitioner,
                   Date day)
{
    const Screening before = storedScreening(writing, id);
    if (before.version == read && !gapsOf(before).empty()) {
        throw Failure({.code = ErrorCode::refused,
                       .subject = {},
                       .detail = "a screening is signed when nothing in it is left open"});
    }
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
    return readOverrides(reading, screening);
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
    const Screening screening = storedScreening(writing, reason.screening);
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

std::chrono::months screeningValidity(Reading& reading)
{
    return readValidity(reading);
}

GateFacts gateFacts(Reading& reading, CourseId course, const std::vector<Block>& blocks, Date today)
{
    return readGateFacts(reading, course, blocks, today);
}

ScreeningGate gateOf(Reading& reading, CourseId course, const std::vector<Block>& blocks,
                     Date today)
{
    return screeningGate(readGateFacts(reading, course, blocks, today));
}

} // namespace quadrille::db
