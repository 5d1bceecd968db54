// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/demo_screenings.h"

#include "app/words/screening_questions.h"

#include "core/screening_gate.h"

#include <algorithm>

namespace quadrille::app
{

namespace
{

void answerAs(Screening& screening, const std::vector<ScreeningAnswer>& answers)
{
    for (const ScreeningAnswer& wanted : answers) {
        giveAnswer(screening, wanted.question, wanted.answer);
        const auto given =
            std::ranges::find(screening.answers, wanted.question, &ScreeningAnswer::question);
        given->note = wanted.note;
        if (!wanted.places.empty()) {
            given->places = wanted.places;
        }
    }
}

} // namespace

Screening demoScreening(CourseId course, const DemoScreening& demo,
                        const std::vector<Block>& blocks)
{
    QuestionSet set = builtInQuestions();
    Screening screening = newScreening(course, set.questions, set.version);
    for (const ScreeningQuestion& question : set.questions) {
        giveAnswer(screening, question.name, Answer::no);
    }
    answerAs(screening, demo.answers);
    for (const GateSite& site : gateSites(blocks, std::nullopt)) {
        screening.skin.push_back({.muscle = site.muscle,
                                  .region = std::nullopt,
                                  .side = site.side,
                                  .sharpBlunt = Sensation::intact,
                                  .warmCold = Sensation::intact});
    }
    screening.skinSeen = demo.isSigned;
    if (!demo.isSigned) { // begun, and waiting for two answers
        std::erase_if(screening.answers, [](const ScreeningAnswer& answer) {
            return answer.question == "metal" || answer.question == "bleeding";
        });
    }
    return screening;
}

Screening demoOpenChange(const Screening& last, const DemoScreening& demo)
{
    Screening next = newScreening(*last.course, last.questions, last.questionsVersion, &last);
    answerAs(next, demo.openChange);
    return next;
}

} // namespace quadrille::app
