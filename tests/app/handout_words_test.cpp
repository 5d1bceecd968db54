// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/handout_reading.h"
#include "tests/support/screened.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::literals;
using tests::bodyOf;
using tests::read;
using tests::wordsOf;
using namespace std::chrono_literals;

namespace
{

const SettingLine& rowNamed(const CardText& card, const std::string& name)
{
    for (const SettingGroup& group : card.settings) {
        for (const SettingLine& row : group.rows) {
            if (row.name.toStdString() == name) {
                return row;
            }
        }
    }
    throw std::runtime_error("no setting " + name);
}

} // namespace

TEST(HandoutWords, TheBigNumbersAreTimesADayMinutesAndDaysAWeek)
{
    const CardText card = wordsOf(tests::blockWithSites(1, false)).cards.at(0);
    ASSERT_EQ(card.numbers.size(), 3U);
    EXPECT_EQ(read(card.numbers[0].number), "2");
    EXPECT_EQ(read(card.numbers[0].label), "times a day");
    EXPECT_EQ(read(card.numbers[1].number), "20");
    EXPECT_EQ(read(card.numbers[1].label), "minutes each");
    EXPECT_EQ(read(card.numbers[2].number), "5");
    EXPECT_EQ(read(card.numbers[2].label), "days a week");
}

TEST(HandoutWords, OnceADayIsOneTimeADay)
{
    Block block = tests::blockWithSites(1, false);
    block.sessionsPerDay = 1;
    EXPECT_EQ(read(wordsOf(block).cards.at(0).numbers[0].label), "time a day");
}

TEST(HandoutWords, ASittingOfBrokenMinutesShowsItsSeconds)
{
    Block block = tests::blockWithSites(1, false);
    block.sites[0].settings.sessionLength = 12min + 30s;
    const CardText card = wordsOf(block).cards.at(0);
    EXPECT_EQ(read(card.numbers[1].number), "12:30");
    EXPECT_EQ(read(rowNamed(card, "Session").value), "12 min 30 s");
}

TEST(HandoutWords, TheWeekOfSquaresBeginsWithTheWeekdayOfTheCoursesStart)
{
    Course course = tests::sampleCourse();
    course.startDate = tests::sampleStart + std::chrono::days(3);
    Plan plan = tests::samplePlan({tests::blockWithSites(1, false)});
    plan.fromDate = course.startDate;
    const auto text = wordsOf(*handoutContent(tests::samplePractice(), tests::samplePatient(),
                                              course, plan, tests::openGate(tests::sampleStart),
                                              std::nullopt, tests::sampleStart));
    const auto& squares = text.cards.at(0).numbers[2].squares;
    std::string letters;
    for (const WeekdaySquare& square : squares) {
        letters += square.prescribed ? read(square.letter) : ".";
    }
    EXPECT_EQ(letters, "TF..MTW"); // Thursday, Friday, rest, rest, Monday …
}

TEST(HandoutWords, DaysOfThePatientsChoiceHaveNoSquares)
{
    Block block = tests::blockWithSites(1, false);
    block.schedule = DaysPerWeek{3};
    const CardText card = wordsOf(block).cards.at(0);
    EXPECT_EQ(read(card.numbers[2].number), "3");
    EXPECT_EQ(read(card.numbers[2].below), "you choose which");
    EXPECT_TRUE(card.numbers[2].squares.empty());
}

TEST(HandoutWords, SaysForWhomAndForWhen)
{
    const CardText card = wordsOf(tests::blockWithSites(1, false)).cards.at(0);
    EXPECT_EQ(read(card.who), "Agnes Thorley, right knee replacement");
    EXPECT_EQ(read(card.when), "Weeks 1 to 4: Mon 2 Mar to Sun 29 Mar 2026");
    EXPECT_EQ(read(card.continued), "Weeks 1 to 4: Mon 2 Mar to Sun 29 Mar 2026, continued");
    EXPECT_EQ(read(card.next), "");
}

TEST(HandoutWords, PointsToThePageThatTakesOver)
{
    Block second = tests::blockWithSites(1, false);
    second.weeks = 1;
    const auto text =
        wordsOf(tests::sampleContent(tests::samplePlan({tests::blockWithSites(1, false), second})));
    EXPECT_EQ(read(text.cards.at(0).next), "From Mon 30 Mar on, go by the page for week 5.");
    EXPECT_EQ(read(text.cards.at(1).next), "");
}

TEST(HandoutWords, SettingsCarryTheirUnitsAndTheRampHabit)
{
    const CardText card = wordsOf(tests::blockWithSites(1, false)).cards.at(0);
    EXPECT_EQ(read(rowNamed(card, "Pulse frequency").value), "50 Hz");
    EXPECT_EQ(read(rowNamed(card, "Phase duration").value), "400 µs");
    EXPECT_EQ(read(rowNamed(card, "On time").value), "10 s");
    EXPECT_EQ(read(rowNamed(card, "On time").note), "ramps inside the on time");
    EXPECT_EQ(read(rowNamed(card, "Session").value), "20 min");
    EXPECT_EQ(read(rowNamed(card, "Contractions").value), "35");
}

TEST(HandoutWords, ACutContractionIsNamedAsCut)
{
    Block block = tests::blockWithSites(1, false);
    block.sites[0].settings.sessionLength = 20min - 1s;
    const CardText card = wordsOf(block).cards.at(0);
    EXPECT_EQ(read(rowNamed(card, "Contractions").value), "35");
    EXPECT_EQ(read(rowNamed(card, "Contractions").note), "the last one cut short");
    EXPECT_EQ(bodyOf(card.steps.at(3)),
              "It pulls for 10 s and rests for 25 s, 35 times, the last one cut short.");
}

TEST(HandoutWords, ACutContractionOfEachMuscleIsNamedAsBoth)
{
    Block block = tests::blockWithSites(2, false);
    block.siteOrder = SiteOrder::oneAfterAnother;
    for (Site& site : block.sites) {
        site.settings.sessionLength = 20min - 1s;
    }
    const CardText card = wordsOf(block).cards.at(0);
    EXPECT_EQ(read(rowNamed(card, "Contractions").note), "for each muscle, the last one cut short");
    EXPECT_EQ(bodyOf(card.steps.at(3)), "It pulls for 10 s and rests for 25 s, 35 times for each "
                                        "muscle, the last one cut short.");
}

TEST(HandoutWords, AsStrongAsCanBeBorneEndsAtAKnownCeiling)
{
    Block block = tests::blockWithSites(2, false);
    EXPECT_EQ(read(wordsOf(block).cards.at(0).sites.howStrong),
              "How strong: as strong as you can bear, without sharp pain, and never above the "
              "figure at the right.");
    for (Site& site : block.sites) {
        site.settings.amplitude.ceiling.reset();
    }
    EXPECT_EQ(read(wordsOf(block).cards.at(0).sites.howStrong),
              "How strong: as strong as you can bear, without sharp pain.");
}

TEST(HandoutWords, AmplitudeIsLastToleratedAndCeilingPerChannel)
{
    const CardText card = wordsOf(tests::blockWithSites(2, false)).cards.at(0);
    ASSERT_EQ(card.sites.rows.size(), 2U);
    EXPECT_EQ(read(card.sites.rows[1].channel), "2");
    EXPECT_EQ(read(card.sites.rows[1].where), "Vastus medialis, right");
    EXPECT_EQ(read(card.sites.rows[1].lastTime), "60 mA");
    EXPECT_EQ(read(card.sites.rows[1].neverAbove), "70 mA");
    EXPECT_EQ(read(card.sites.note), "");
}

TEST(HandoutWords, AnUnknownAmplitudeIsADashThatIsExplained)
{
    Block block = tests::blockWithSites(1, false);
    block.sites[0].settings.amplitude = {};
    const CardText card = wordsOf(block).cards.at(0);
    EXPECT_EQ(read(card.sites.rows.at(0).lastTime), "—");
    EXPECT_EQ(read(card.sites.rows.at(0).neverAbove), "—");
    EXPECT_EQ(read(card.sites.note), "A dash means: as set up by your physiotherapist.");
}

TEST(HandoutWords, PadsThatDifferAreNamedPerChannelAndLead)
{
    const CardText card = wordsOf(tests::blockWithSites(2, true)).cards.at(0);
    EXPECT_EQ(read(card.sites.rows.at(0).pads), "A 50 × 90 mm, B 50 × 50 mm");
}

TEST(HandoutWords, SettingsThatDifferStandUnderTheirChannel)
{
    const CardText card = wordsOf(tests::blockWithSites(2, true)).cards.at(0);
    ASSERT_EQ(card.settings.size(), 3U);
    EXPECT_EQ(read(card.settings[2].heading), "Channel 2: Vastus medialis, right");
    ASSERT_EQ(card.settings[2].rows.size(), 1U);
    EXPECT_EQ(read(card.settings[2].rows[0].value), "300 µs");
}

TEST(HandoutWords, AShortSharedPositionHeadsItsStep)
{
    const CardText card = wordsOf(tests::blockWithSites(2, false)).cards.at(0);
    EXPECT_EQ(read(card.steps.at(0).head), "Sit, knee bent, foot against the wall or strapped.");
    EXPECT_EQ(read(card.steps.at(3).head), "Push along with each contraction.");
}

TEST(HandoutWords, PositionsThatDifferStandUnderTheirMuscle)
{
    const CardText card = wordsOf(tests::blockWithSites(2, true)).cards.at(0);
    EXPECT_EQ(read(card.steps.at(0).head), "Get into position.");
    EXPECT_EQ(bodyOf(card.steps[0]), "Vastus lateralis, right: Position 1, half lying.\n"
                                     "Vastus medialis, right: Position 2, half lying.");
}

TEST(HandoutWords, WhatOneOfTheSitesSaysHoldsForAllThatRunAtOnce)
{
    Block block = tests::blockWithSites(2, false);
    block.sites[1].instruction.clear();
    EXPECT_EQ(read(wordsOf(block).cards.at(0).steps.at(3).head),
              "Push along with each contraction.");
    block.siteOrder = SiteOrder::oneAfterAnother;
    const StepText inTurn = wordsOf(block).cards.at(0).steps.at(3);
    EXPECT_EQ(read(inTurn.head), "While it pulls:");
    EXPECT_THAT(bodyOf(inTurn), testing::HasSubstr("Vastus lateralis, right: Push along"));
}

TEST(HandoutWords, APairOfPadsOfOneSizeIsNamedByItsSize)
{
    using namespace quadrille::literals;
    Block block = tests::blockWithSites(2, false);
    block.sites[1].pads[0].height = 50_mm;
    block.sites[1].pads[1].height = 50_mm;
    const CardText card = wordsOf(block).cards.at(0);
    EXPECT_EQ(read(card.sites.head.where), "Muscle and pads");
    EXPECT_EQ(read(card.sites.rows.at(0).pads), "50 × 90 mm");
    EXPECT_EQ(read(card.sites.rows.at(1).pads), "50 × 50 mm");
}

TEST(HandoutWords, EmptyTextsLeaveWholeSentences)
{
    Block block = tests::blockWithSites(1, false);
    block.sites[0].position.clear();
    block.sites[0].instruction.clear();
    const CardText card = wordsOf(block).cards.at(0);
    EXPECT_EQ(read(card.steps.at(0).head), "Sit or lie as you were shown.");
    EXPECT_EQ(read(card.steps.at(3).head), "Let it pull, then let it rest.");
}

TEST(HandoutWords, OneAfterAnotherSaysSoAndAddsUpTheMinutes)
{
    Block block = tests::blockWithSites(2, false);
    block.siteOrder = SiteOrder::oneAfterAnother;
    const CardText card = wordsOf(block).cards.at(0);
    EXPECT_EQ(read(card.numbers[1].number), "40");
    EXPECT_EQ(read(card.numbers[1].below), "one muscle after the other");
    EXPECT_EQ(read(rowNamed(card, "Contractions").note), "for each muscle");
    EXPECT_EQ(bodyOf(card.steps.at(3)),
              "It pulls for 10 s and rests for 25 s, 35 times for each muscle.");
}

TEST(HandoutWords, TheFootNamesDayPrinterPatientAndPlan)
{
    const auto text = wordsOf(tests::blockWithSites(1, false));
    EXPECT_EQ(read(text.printed),
              "Printed 2 Mar 2026 by Ruta Vennel · Patient 1017 · Plan 2 from 2 Mar 2026");
}

TEST(HandoutWords, TheFootNamesTheIssuerWhereNobodyIsKnownToPrint)
{
    const auto text = wordsOf(
        *handoutContent(tests::samplePractice(), tests::samplePatient(), tests::sampleCourse(),
                        tests::samplePlan({tests::blockWithSites(1, false)}),
                        tests::openGate(tests::sampleStart), std::nullopt, tests::sampleStart));
    EXPECT_EQ(read(text.printed), "Printed 2 Mar 2026 · Patient 1017 · Plan 2 from 2 Mar 2026 "
                                  "by Ruta Vennel");
}

TEST(HandoutWords, TheHeadNamesThePracticeAndItsTown)
{
    EXPECT_EQ(read(wordsOf(tests::blockWithSites(1, false)).practice),
              "Quay Lane Physiotherapy, Marrowick");
}

TEST(HandoutWords, APlanThatIsOverSaysSince)
{
    const HandoutWords words(QuantityText(QLocale(QLocale::English, QLocale::UnitedKingdom)));
    const auto content = tests::sampleContent(tests::samplePlan({tests::blockWithSites(1, false)}),
                                              tests::sampleStart + std::chrono::days(200));
    EXPECT_EQ(read(words.planIsOver(content)),
              "Plan 2 ended on 29 Mar 2026, so there is nothing to print. Issue the next plan "
              "first.");
}
