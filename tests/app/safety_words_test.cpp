// SPDX-License-Identifier: GPL-3.0-or-later
// What a handout says about its safe use.
#include "tests/app/handout_reading.h"
#include "tests/support/screened.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using tests::bodyOf;
using tests::read;
using tests::wordsOf;

namespace
{

/// Everything a patient may read.
std::vector<std::string> sentencesOf(const HandoutText& text)
{
    std::vector<std::string> all{read(text.printed), read(text.practice), read(text.safety.title),
                                 read(text.safety.stopTitle)};
    for (const CardText& card : text.cards) {
        all.insert(all.end(),
                   {read(card.title), read(card.who), read(card.when), read(card.next),
                    read(card.settingsTitle), read(card.sites.howStrong), read(card.sites.note)});
        for (const StepText& step : card.steps) {
            all.push_back(read(step.head));
            all.push_back(bodyOf(step));
        }
        for (const BigNumberText& number : card.numbers) {
            all.push_back(read(number.label) + " " + read(number.below));
        }
    }
    std::vector<SafetyList> lists = text.safety.lists;
    lists.push_back(text.safety.stop);
    for (const SafetyList& list : lists) {
        all.push_back(read(list.heading));
        for (const QString& item : list.items) {
            all.push_back(read(item));
        }
    }
    for (const RingText& ring : text.safety.ring) {
        all.push_back(read(ring.who) + " " + read(ring.below));
    }
    return all;
}

std::string joined(const std::vector<std::string>& sentences)
{
    std::string all;
    for (const std::string& sentence : sentences) {
        all += sentence + "\n";
    }
    return all;
}

} // namespace

TEST(SafetyWords, AdviceOfAPrecautionStandsWhereThePatientNeedsIt)
{
    ScreeningGate gate = tests::openGate(tests::sampleStart);
    gate.advice = {{"one", "One?", "Look before.", AdvicePlace::before},
                   {"two", "Two?", "Breathe on\nquietly.", AdvicePlace::during},
                   {"three", "Three?", "Ring us after.", AdvicePlace::after}};
    const auto text = wordsOf(*handoutContent(tests::samplePractice(), tests::samplePatient(),
                                              tests::sampleCourse(),
                                              tests::samplePlan({tests::blockWithSites(1, false)}),
                                              gate, std::nullopt, tests::sampleStart));
    ASSERT_EQ(text.safety.lists.size(), 4U);
    EXPECT_EQ(read(text.safety.lists[1].heading), "Before");
    EXPECT_EQ(read(text.safety.lists[1].items.back()), "Look before.");
    EXPECT_EQ(read(text.safety.lists[2].items.back()), "Breathe on quietly.");
    EXPECT_EQ(read(text.safety.lists[3].items.back()), "Ring us after.");
}

// Common practice, no source: redness that fades within an hour is expected; what stays is not.
TEST(SafetyWords, RednessIsNormalForAnHour)
{
    const std::string all = joined(sentencesOf(wordsOf(tests::blockWithSites(1, false))));
    EXPECT_THAT(all, testing::HasSubstr("fades within an hour is normal"));
    EXPECT_THAT(all, testing::HasSubstr("still red after an hour"));
}

TEST(SafetyWords, NothingTellsThePatientToChangeTheDoseOrMoveAPad)
{
    for (const std::string& sentence : sentencesOf(wordsOf(tests::blockWithSites(2, true)))) {
        for (const char* never :
             {"try for", "Try for", "turn it higher", "move the pad", "add a"}) {
            EXPECT_THAT(sentence, testing::Not(testing::HasSubstr(never)));
        }
    }
}

TEST(SafetyWords, AreShortAndCalm)
{
    for (const std::string& sentence : sentencesOf(wordsOf(tests::blockWithSites(2, true)))) {
        EXPECT_EQ(sentence.find('!'), std::string::npos) << sentence;
        EXPECT_LE(sentence.size(), 160U) << sentence;
    }
}

// Head, face, neck and chest: IEC 60601-2-10, instructions for use, item h.
TEST(SafetyWords, SayWhatMustNeverBeMissing)
{
    const std::string all = joined(sentencesOf(wordsOf(tests::blockWithSites(1, false))));
    for (const char* must : {"only as shown, on the person it was set up for",
                             "on the head or face", "front or side of the neck", "across the chest",
                             "not one pad on each side, not chest to back", "broken or sore skin",
                             "stimulator’s own instructions", "advice of a licensed practitioner",
                             "children", "Stop, and ring us, if", "you are in doubt"}) {
        EXPECT_THAT(all, testing::HasSubstr(must));
    }
}

TEST(SafetyWords, ANumberThatIsNotFilledStaysEmptyToBeWrittenOn)
{
    const auto text = wordsOf(*handoutContent({}, tests::samplePatient(), tests::sampleCourse(),
                                              tests::samplePlan({tests::blockWithSites(1, false)}),
                                              tests::openGate(tests::sampleStart), std::nullopt,
                                              tests::sampleStart));
    ASSERT_EQ(text.safety.ring.size(), 2U);
    EXPECT_TRUE(text.safety.ring[0].number.isEmpty());
    EXPECT_EQ(read(text.safety.ring[0].who), "Your practice");
    EXPECT_TRUE(text.safety.ring[1].number.isEmpty());
}
