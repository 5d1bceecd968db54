// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/screening_rows.h"

#include "db/codec.h"
#include "db/failure.h"
#include "db/practice_preferences.h"

#include <algorithm>
#include <sstream>

namespace quadrille::db
{

namespace
{

std::vector<BodyRegion> regionsFrom(const std::string& words)
{
    std::vector<BodyRegion> regions;
    std::istringstream stream(words);
    for (std::string word; stream >> word;) {
        const auto region = choiceOf<BodyRegion>(word);
        if (!region) {
            failOnWord(word);
        }
        regions.push_back(*region);
    }
    return regions;
}

void readQuestions(const Connection& connection, Screening& screening)
{
    Statement rows(connection,
                   "SELECT question, class, reach, regions, wording, advice, advice_place "
                   "FROM screening_question WHERE screening = ? ORDER BY ordinal");
    rows.bind({valueOf(screening.id)});
    while (rows.next()) {
        ScreeningQuestion& question = screening.questions.emplace_back();
        question.name = rows.takeText();
        question.questionClass = takeChoice<QuestionClass>(rows);
        question.reach = takeChoice<Reach>(rows);
        question.regions = regionsFrom(rows.takeText());
        question.wording = rows.takeText();
        question.advice = rows.takeText();
        question.adviceAt = takeChoice<AdvicePlace>(rows);
    }
}

void readAnswers(const Connection& connection, Screening& screening)
{
    Statement rows(connection, "SELECT question, answer, note FROM screening_answer "
                               "WHERE screening = ? ORDER BY question");
    rows.bind({valueOf(screening.id)});
    while (rows.next()) {
        ScreeningAnswer& answer = screening.answers.emplace_back();
        answer.question = rows.takeText();
        answer.answer = takeChoice<Answer>(rows);
        answer.note = rows.takeText();
    }
    Statement places(connection, "SELECT question, region, side FROM screening_place "
                                 "WHERE screening = ? ORDER BY question, ordinal");
    places.bind({valueOf(screening.id)});
    while (places.next()) {
        const std::string question = places.takeText();
        const auto region = takeChoice<BodyRegion>(places);
        const auto side = takeChoice<PlaceSide>(places);
        const auto answer =
            std::ranges::find(screening.answers, question, &ScreeningAnswer::question);
        if (answer != screening.answers.end()) {
            answer->places.push_back({region, side});
        }
    }
}

void readSkin(const Connection& connection, Screening& screening)
{
    Statement rows(connection, "SELECT muscle, side, region, sharp_blunt, warm_cold FROM skin_test "
                               "WHERE screening = ? ORDER BY ordinal");
    rows.bind({valueOf(screening.id)});
    while (rows.next()) {
        SkinTest& test = screening.skin.emplace_back();
        test.muscle = rows.takeText();
        test.side = takeChoice<Side>(rows);
        test.region = takeOptionalChoice<BodyRegion>(rows);
        test.sharpBlunt = takeOptionalChoice<Sensation>(rows);
        test.warmCold = takeOptionalChoice<Sensation>(rows);
    }
}

std::vector<Screening> screeningsWhere(Reading& reading, CourseId course, const char* which)
{
    std::vector<Screening> screenings;
    {
        Statement rows(reading.connection(),
                       std::string("SELECT id, course, number, questions_version, signed_on, "
                                   "signed_by, signed_by_name, version, skin_seen FROM screening "
                                   "WHERE course = ? ORDER BY number ") +
                           which);
        rows.bind({valueOf(course)});
        while (rows.next()) {
            Screening& screening = screenings.emplace_back();
            screening.id = takeId<Screening>(rows);
            screening.course = takeId<Course>(rows);
            screening.number = takeInt(rows);
            screening.questionsVersion = takeInt(rows);
            screening.signedOn = takeOptionalDate(rows);
            screening.signedBy = takeOptionalId<Practitioner>(rows);
            screening.signedByName = rows.takeText();
            screening.version = takeInt(rows);
            screening.skinSeen = takeFlag(rows);
        }
    }
    for (Screening& screening : screenings) {
        readQuestions(reading.connection(), screening);
        readAnswers(reading.connection(), screening);
        readSkin(reading.connection(), screening);
    }
    return screenings;
}

} // namespace

std::vector<Screening> readScreenings(Reading& reading, CourseId course)
{
    return screeningsWhere(reading, course, "");
}

std::optional<Screening> readLatestScreening(Reading& reading, CourseId course)
{
    auto latest = screeningsWhere(reading, course, "DESC LIMIT 1");
    return latest.empty() ? std::nullopt : std::optional(std::move(latest.front()));
}

std::vector<ScreeningOverride> readOverrides(Reading& reading, ScreeningId screening)
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

std::chrono::months readValidity(Reading& reading)
{
    const auto months = wholeNumberPreference(reading, screeningValidityName,
                                              static_cast<int>(leastValidity.count()),
                                              static_cast<int>(mostValidity.count()));
    return months ? std::chrono::months(*months) : usualValidity;
}

GateFacts readGateFacts(Reading& reading, CourseId course, const std::vector<Block>& blocks,
                        Date today)
{
    GateFacts facts;
    facts.latest = readLatestScreening(reading, course);
    if (facts.latest) {
        facts.overrides = readOverrides(reading, *facts.latest->id);
    }
    facts.sites = gateSites(blocks, facts.latest);
    facts.today = today;
    facts.validity = readValidity(reading);
    return facts;
}

void requireOpenGate(Reading& reading, CourseId course, const std::vector<Block>& blocks,
                     Date today)
{
    if (const auto passed = passGate(screeningGate(readGateFacts(reading, course, blocks, today)));
        !passed) {
        throw Failure(passed.error());
    }
}

} // namespace quadrille::db
