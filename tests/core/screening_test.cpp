// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/screened.h"

#include "core/screening.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille
{
namespace
{

using testing::ElementsAre;
using testing::IsEmpty;

const CourseId course{1};

Screening unanswered()
{
    return newScreening(course, tests::threeQuestions(), 1);
}

TEST(ScreeningRecord, IsSignedWhenEveryQuestionIsAnsweredAndTheSkinWasSeen)
{
    Screening screening = unanswered();
    EXPECT_THAT(gapsOf(screening), ElementsAre(ScreeningGap{GapKind::notAnswered, 0},
                                               ScreeningGap{GapKind::notAnswered, 1},
                                               ScreeningGap{GapKind::notAnswered, 2},
                                               ScreeningGap{GapKind::skinNotSeen, 0}));
    EXPECT_THAT(gapsOf(tests::allClear(course)), IsEmpty());
}

TEST(ScreeningRecord, NotKnownIsAnAnswerAndCanBeSigned)
{
    Screening screening = tests::allClear(course);
    for (const ScreeningQuestion& question : screening.questions) {
        giveAnswer(screening, question.name, Answer::notKnown);
    }
    EXPECT_THAT(gapsOf(screening), IsEmpty());
}

TEST(ScreeningRecord, AYesNeedsANoteAndALocalOneItsPlace)
{
    Screening screening = tests::allClear(course);
    giveAnswer(screening, "broken_skin", Answer::yes);
    EXPECT_THAT(gapsOf(screening), ElementsAre(ScreeningGap{GapKind::noNote, 1}));
    screening.answers[1].note = " \n";
    EXPECT_THAT(gapsOf(screening), ElementsAre(ScreeningGap{GapKind::noNote, 1}));
    screening.answers[1].note = "graze";
    EXPECT_THAT(gapsOf(screening), ElementsAre(ScreeningGap{GapKind::noPlace, 1}));
    screening.answers[1].places = {{BodyRegion::lowerLeg, PlaceSide::left}};
    EXPECT_THAT(gapsOf(screening), IsEmpty());
}

TEST(ScreeningRecord, ASkinTestIsFilledInWhole)
{
    Screening screening = tests::allClear(course);
    screening.skin = {{.muscle = "quadriceps", .sharpBlunt = Sensation::intact}};
    EXPECT_THAT(gapsOf(screening), ElementsAre(ScreeningGap{GapKind::siteNotTested, 0}));
    screening.skin[0].warmCold = Sensation::notTested; // said, not forgotten
    EXPECT_THAT(gapsOf(screening), IsEmpty());
}

TEST(ScreeningRecord, ALocalContraindicationOfFixedRegionsKnowsItsPlaces)
{
    std::vector<ScreeningQuestion> questions = tests::threeQuestions();
    questions[1].regions = {BodyRegion::abdomen, BodyRegion::pelvis};
    Screening screening = newScreening(course, questions, 1);
    giveAnswer(screening, "broken_skin", Answer::yes);
    EXPECT_THAT(screening.answers[0].places,
                ElementsAre(BodyPlace{BodyRegion::abdomen, PlaceSide::both},
                            BodyPlace{BodyRegion::pelvis, PlaceSide::both}));
    giveAnswer(screening, "broken_skin", Answer::no);
    EXPECT_THAT(screening.answers[0].places, IsEmpty());
}

TEST(ScreeningRecord, WhatChangedSinceTheLastOneIsNamed)
{
    const Screening last = tests::allClear(course);
    Screening next = newScreening(course, tests::threeQuestions(), 1, &last);
    EXPECT_THAT(changedSince(next, last), IsEmpty());
    EXPECT_FALSE(next.skinSeen); // looked at again each time
    giveAnswer(next, "heart_disease", Answer::yes);
    EXPECT_THAT(changedSince(next, last), ElementsAre("heart_disease"));
    giveAnswer(next, "heart_disease", Answer::no);
    next.answers[0].note = "asked again";
    EXPECT_THAT(changedSince(next, last), ElementsAre("active_implant"));
}

TEST(ScreeningRecord, TheSkinIsTestedAgainWhereItWasTestedBefore)
{
    Screening last = tests::allClear(course);
    last.skin = {{.muscle = "quadriceps",
                  .region = BodyRegion::thigh,
                  .sharpBlunt = Sensation::intact,
                  .warmCold = Sensation::notTested}};
    Screening next = newScreening(course, tests::threeQuestions(), 1, &last);
    next.skinSeen = true;
    ASSERT_THAT(next.skin, testing::SizeIs(1));
    EXPECT_EQ(next.skin[0].region, BodyRegion::thigh);
    EXPECT_EQ(next.skin[0].sharpBlunt, std::nullopt);
    EXPECT_THAT(gapsOf(next), testing::SizeIs(1)) << "a signature attests no test of last time";
}

TEST(ScreeningRecord, AQuestionThatIsNoLongerAskedIsLeftBehindAndANewOneIsOpen)
{
    const Screening last = tests::allClear(course);
    std::vector<ScreeningQuestion> questions = tests::threeQuestions();
    questions[1].name = "own_4";
    const Screening next = newScreening(course, questions, 2, &last);
    EXPECT_EQ(answerTo(next, "broken_skin"), nullptr);
    EXPECT_EQ(answerTo(next, "own_4"), nullptr);
    EXPECT_NE(answerTo(next, "active_implant"), nullptr);
}

TEST(ScreeningRecord, AQuestionThatIsNotAskedTakesNoAnswer)
{
    Screening screening = tests::allClear(course);
    giveAnswer(screening, "own_4", Answer::yes);
    EXPECT_EQ(screening, tests::allClear(course));
}

TEST(ScreeningRecord, AnAnswerIsNotOneToAQuestionThatIsWordedOrWeighedOtherwise)
{
    const Screening last = tests::allClear(course);
    std::vector<ScreeningQuestion> questions = tests::threeQuestions();
    questions[0].wording = "An implant, with a battery or without?";
    questions[1].questionClass = QuestionClass::contraindication;
    questions[2].advice = "Begin low."; // an answer stays one
    const Screening next = newScreening(course, questions, 2, &last);
    EXPECT_EQ(answerTo(next, "active_implant"), nullptr);
    EXPECT_EQ(answerTo(next, "broken_skin"), nullptr);
    EXPECT_NE(answerTo(next, "heart_disease"), nullptr);
}

TEST(ScreeningRecord, PlacesOfFixedRegionsAreNotThoseOfOthers)
{
    std::vector<ScreeningQuestion> questions = tests::threeQuestions();
    questions[1].regions = {BodyRegion::abdomen};
    Screening last = newScreening(course, questions, 1);
    giveAnswer(last, "broken_skin", Answer::yes);
    questions[1].regions = {BodyRegion::abdomen, BodyRegion::pelvis};
    EXPECT_EQ(answerTo(newScreening(course, questions, 2, &last), "broken_skin"), nullptr);
}

TEST(ScreeningRecord, AQuestionOfThePracticeIsAskedUnderANameThatStays)
{
    const PracticeQuestion own{.id = PracticeQuestionId(4), .wording = "Afraid of current?"};
    EXPECT_EQ(asked(own).name, "own_4");
    EXPECT_EQ(asked(own).wording, "Afraid of current?");
}

} // namespace
} // namespace quadrille
