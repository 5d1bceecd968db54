// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/practice_questions.h"

#include "db/codec.h"
#include "db/failure.h"
#include "db/versions.h"

#include <algorithm>

namespace quadrille::db
{

namespace
{

Columns columnsOf(const PracticeQuestion& question)
{
    return {{"wording", valueOf(question.wording)},  {"class", valueOf(question.questionClass)},
            {"reach", valueOf(question.reach)},      {"reason", valueOf(question.reason)},
            {"advice", valueOf(question.advice)},    {"advice_place", valueOf(question.adviceAt)},
            {"archived", valueOf(question.archived)}};
}

} // namespace

std::vector<PracticeQuestion> practiceQuestions(Reading& reading)
{
    std::vector<PracticeQuestion> questions;
    Statement rows(reading.connection(),
                   "SELECT id, wording, class, reach, reason, advice, advice_place, archived, "
                   "version FROM practice_question ORDER BY archived, id");
    while (rows.next()) {
        PracticeQuestion& question = questions.emplace_back();
        question.id = takeId<PracticeQuestion>(rows);
        question.wording = rows.takeText();
        question.questionClass = takeChoice<QuestionClass>(rows);
        question.reach = takeChoice<Reach>(rows);
        question.reason = rows.takeText();
        question.advice = rows.takeText();
        question.adviceAt = takeChoice<AdvicePlace>(rows);
        question.archived = takeFlag(rows);
        question.version = takeInt(rows);
    }
    return questions;
}

PracticeQuestionId addPracticeQuestion(Writing& writing, const PracticeQuestion& question)
{
    requireFilled(question.wording, Field::name);
    return PracticeQuestionId(
        addRecord(writing, {.kind = "practice_question"}, columnsOf(question)));
}

void changePracticeQuestion(Writing& writing, const PracticeQuestion& question)
{
    requireFilled(question.wording, Field::name);
    const auto all = practiceQuestions(writing);
    const auto before = std::ranges::find(all, question.id, &PracticeQuestion::id);
    if (!question.id || before == all.end()) {
        throw Failure({.code = ErrorCode::notFound, .subject = "practice_question", .detail = {}});
    }
    saveOver(writing, {.kind = "practice_question", .id = question.id->key()}, question.version,
             columnsOf(*before), columnsOf(question));
}

} // namespace quadrille::db
