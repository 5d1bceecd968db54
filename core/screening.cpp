// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/screening.h"

#include <algorithm>
#include <cassert>
#include <iterator>
#include <utility>

namespace quadrille
{

namespace
{

bool isBlank(const std::string& text)
{
    return text.find_first_not_of(" \t\r\n") == std::string::npos;
}

bool isLocal(const ScreeningQuestion& question)
{
    return question.questionClass == QuestionClass::localContraindication;
}

/// An answer to one is an answer to the other, and lies where it lay.
bool askTheSame(const ScreeningQuestion& a, const ScreeningQuestion& b)
{
    return a.wording == b.wording && a.questionClass == b.questionClass && a.regions == b.regions;
}

bool differ(const ScreeningAnswer* now, const ScreeningAnswer* before)
{
    if (now == nullptr || before == nullptr) {
        return now != before;
    }
    return now->answer != before->answer || now->note != before->note ||
           now->places != before->places;
}

} // namespace

ScreeningQuestion asked(const PracticeQuestion& question)
{
    assert(question.id);
    return {.name = "own_" + std::to_string(question.id->key()),
            .wording = question.wording,
            .questionClass = question.questionClass,
            .reach = question.reach,
            .regions = {},
            .reason = question.reason,
            .source = {},
            .advice = question.advice,
            .adviceAt = question.adviceAt};
}

const ScreeningAnswer* answerTo(const Screening& screening, std::string_view question)
{
    const auto found = std::ranges::find(screening.answers, question, &ScreeningAnswer::question);
    return found != screening.answers.end() ? &*found : nullptr;
}

const ScreeningQuestion* questionOf(const Screening& screening, std::string_view name)
{
    const auto found = std::ranges::find(screening.questions, name, &ScreeningQuestion::name);
    return found != screening.questions.end() ? &*found : nullptr;
}

void giveAnswer(Screening& screening, std::string_view question, Answer answer)
{
    const ScreeningQuestion* asked = questionOf(screening, question);
    if (asked == nullptr) {
        return;
    }
    auto found = std::ranges::find(screening.answers, question, &ScreeningAnswer::question);
    if (found == screening.answers.end()) {
        // In the order of their names, as the store gives them back.
        found =
            std::ranges::lower_bound(screening.answers, question, {}, &ScreeningAnswer::question);
        found = screening.answers.insert(
            found, {.question = std::string(question), .answer = answer, .note = {}});
    }
    found->answer = answer;
    found->places = answer == Answer::no ? std::vector<BodyPlace>() : found->places;
    if (isLocal(*asked) && !asked->regions.empty() && answer != Answer::no) {
        found->places.clear();
        std::ranges::transform(asked->regions, std::back_inserter(found->places),
                               [](BodyRegion region) {
                                   return BodyPlace{region, PlaceSide::both};
                               });
    }
}

std::vector<ScreeningGap> gapsOf(const Screening& screening)
{
    std::vector<ScreeningGap> gaps;
    for (std::size_t i = 0; i < screening.questions.size(); ++i) {
        const ScreeningQuestion& question = screening.questions[i];
        const ScreeningAnswer* given = answerTo(screening, question.name);
        if (given == nullptr) {
            gaps.push_back({GapKind::notAnswered, i});
        } else if (given->answer == Answer::yes && isBlank(given->note)) {
            gaps.push_back({GapKind::noNote, i});
        } else if (given->answer == Answer::yes && isLocal(question) && given->places.empty()) {
            gaps.push_back({GapKind::noPlace, i});
        }
    }
    for (std::size_t i = 0; i < screening.skin.size(); ++i) {
        if (!screening.skin[i].sharpBlunt || !screening.skin[i].warmCold) {
            gaps.push_back({GapKind::siteNotTested, i});
        }
    }
    if (!screening.skinSeen) {
        gaps.push_back({GapKind::skinNotSeen, 0});
    }
    return gaps;
}

std::vector<std::string> changedSince(const Screening& screening, const Screening& earlier)
{
    std::vector<std::string> changed;
    for (const ScreeningQuestion& question : screening.questions) {
        if (differ(answerTo(screening, question.name), answerTo(earlier, question.name))) {
            changed.push_back(question.name);
        }
    }
    return changed;
}

Screening newScreening(CourseId course, std::vector<ScreeningQuestion> questions,
                       int questionsVersion, const Screening* last)
{
    Screening screening;
    screening.course = course;
    screening.questionsVersion = questionsVersion;
    screening.questions = std::move(questions);
    if (last != nullptr) {
        std::ranges::copy_if(
            last->answers, std::back_inserter(screening.answers),
            [&](const ScreeningAnswer& given) {
                const ScreeningQuestion* now = questionOf(screening, given.question);
                const ScreeningQuestion* before = questionOf(*last, given.question);
                return now != nullptr && before != nullptr && askTheSame(*now, *before);
            });
        // The sites stay listed; what is felt there is tried again.
        screening.skin = last->skin;
        for (SkinTest& test : screening.skin) {
            test.sharpBlunt.reset();
            test.warmCold.reset();
        }
    }
    return screening;
}

} // namespace quadrille
