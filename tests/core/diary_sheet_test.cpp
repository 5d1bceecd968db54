// SPDX-License-Identifier: GPL-3.0-or-later
// Copying a printed diary, key by key.
#include "tests/core/copied_diary.h"

#include <gtest/gtest.h>

namespace quadrille::test
{
namespace
{

using namespace std::chrono_literals;

TEST(DiarySheet, ATickCostsOneKeyAndTwoWithTheMoveOnAWholePageOfTwoSessionsADay)
{
    DiarySheet sheet = emptySheet(copiedPlan(2));
    const int sessions = 4 * 5 * 2; // four weeks, Monday to Friday, twice
    int keys = 0;
    while (true) {
        ASSERT_EQ(sheet.asPrescribed(), std::nullopt); // Space
        ++keys;
        if (writtenSessions(sheet.diary()) == sessions) {
            break;
        }
        ASSERT_EQ(sheet.goOn(), std::nullopt); // Enter
        ++keys;
    }
    EXPECT_EQ(keys, 79); // 40 ticks and 39 moves
    EXPECT_LE(keys, 2 * sessions);
}

TEST(DiarySheet, APageWithoutAGapCostsAKeyAWeekBesideTheMoves)
{
    DiarySheet sheet = emptySheet(copiedPlan(2));
    int keys = 0;
    for (int week = 0; week < 4; ++week) {
        ASSERT_EQ(sheet.restOfWeek(), std::nullopt); // Ctrl D
        ++keys;
        if (week < 3) {
            ASSERT_EQ(sheet.goOn(), std::nullopt);
            ++keys;
        }
    }
    EXPECT_EQ(keys, 7);
    EXPECT_EQ(writtenSessions(sheet.diary()), 40);
}

TEST(DiarySheet, SpaceEntersTheMinutesAsPrescribedAndNothingElse)
{
    DiarySheet sheet = emptySheet(copiedPlan());
    EXPECT_EQ(sheet.offeredIn(marchDay(2), 1), Milliseconds(20min));
    sheet.asPrescribed();
    const WrittenDay& monday = sheet.diary().on(marchDay(2));
    ASSERT_EQ(monday.sessions.size(), 1U);
    EXPECT_EQ(monday.sessions.at(1), (WrittenSession{.time = Milliseconds(20min)}));
    EXPECT_EQ(monday.skin, std::nullopt);
    EXPECT_EQ(monday.remark, "");
    EXPECT_EQ(sheet.offeredIn(marchDay(2), 1), std::nullopt) << "it is written now";
}

TEST(DiarySheet, SpaceWritesNothingWhereNothingIsPrescribed)
{
    DiarySheet sheet = emptySheet(copiedPlan());
    sheet.goTo({.day = marchDay(7)}); // Saturday
    EXPECT_EQ(sheet.asPrescribed(), DiaryRefusal::nothingPrescribed);
    sheet.goTo({.day = marchDay(6), .session = 2});
    EXPECT_EQ(sheet.asPrescribed(), DiaryRefusal::nothingPrescribed);
    EXPECT_TRUE(sheet.diary().days.empty());
}

TEST(DiarySheet, NothingIsEnteredAheadOrAfterTheEndOfTheCourse)
{
    DiarySheet sheet = emptySheet(copiedPlan(), marchDay(4));
    sheet.goTo({.day = marchDay(5)});
    EXPECT_EQ(sheet.asPrescribed(), DiaryRefusal::dayToCome);
    EXPECT_EQ(sheet.type('9'), DiaryRefusal::dayToCome);
    EXPECT_EQ(sheet.receivedThroughHere(), DiaryRefusal::dayToCome);
    CourseRecords ended = copiedRecords(copiedPlan());
    ended.course.endDate = marchDay(4);
    DiarySheet other(diaryFormOf(ended, {}, marchDay(20)), {});
    other.goTo({.day = marchDay(5)});
    EXPECT_EQ(other.asPrescribed(), DiaryRefusal::outsideCourse);
    EXPECT_TRUE(sheet.diary().days.empty());
    EXPECT_TRUE(other.diary().days.empty());
}

TEST(DiarySheet, DigitsAreMinutesAndNoughtIsNotDone)
{
    DiarySheet sheet = emptySheet(copiedPlan());
    typeSigns(sheet, "12");
    EXPECT_EQ(minutesOn(sheet, marchDay(2)), 12);
    EXPECT_EQ(sheet.typed(), "12");
    sheet.backspace();
    EXPECT_EQ(minutesOn(sheet, marchDay(2)), 1);
    sheet.goOn();
    typeSigns(sheet, "0");
    EXPECT_EQ(minutesOn(sheet, marchDay(3)), 0);
    sheet.goTo({.day = marchDay(2)});
    typeSigns(sheet, "7.5"); // in place of what stood there
    EXPECT_EQ(sheet.diary().on(marchDay(2)).sessions.at(1).time, Milliseconds(7min + 30s));
    EXPECT_EQ(sheet.type('x'), std::nullopt);
    EXPECT_EQ(sheet.typed(), "7.5");
}

TEST(DiarySheet, EnterGoesToTheNextSessionThenToTheNextDayThatHasOne)
{
    DiarySheet sheet = emptySheet(copiedPlan(2));
    EXPECT_EQ(sheet.place(), (DiaryPlace{.day = marchDay(2), .session = 1}));
    sheet.goOn();
    EXPECT_EQ(sheet.place(), (DiaryPlace{.day = marchDay(2), .session = 2}));
    sheet.goOn();
    EXPECT_EQ(sheet.place(), (DiaryPlace{.day = marchDay(3), .session = 1}));
    sheet.goTo({.day = marchDay(6), .session = 2}); // Friday
    sheet.goOn();
    EXPECT_EQ(sheet.place(), (DiaryPlace{.day = marchDay(9), .session = 1})) << "past the weekend";
    sheet.goTo({.day = marchDay(27), .session = 2});
    EXPECT_EQ(sheet.goOn(), DiaryRefusal::lastSession);
}

TEST(DiarySheet, FillsAMarkedRunAndLeavesWhatIsWritten)
{
    DiarySheet sheet = emptySheet(copiedPlan());
    sheet.goTo({.day = marchDay(3)});
    typeSigns(sheet, "5");
    sheet.goTo({.day = marchDay(2)});
    sheet.extendRun(7); // to Monday of week 2
    EXPECT_EQ(sheet.run(), (DiaryRun{marchDay(2), marchDay(9)}));
    EXPECT_EQ(sheet.fillRun(), std::nullopt);
    EXPECT_EQ(minutesOn(sheet, marchDay(2)), 20);
    EXPECT_EQ(minutesOn(sheet, marchDay(3)), 5);
    EXPECT_EQ(minutesOn(sheet, marchDay(7)), -1) << "a rest day";
    EXPECT_EQ(minutesOn(sheet, marchDay(9)), 20);
    EXPECT_EQ(sheet.place().day, marchDay(9));
    EXPECT_FALSE(sheet.isMarked());
    EXPECT_EQ(sheet.fillRun(), DiaryRefusal::nothingToFill);
}

TEST(DiarySheet, FillsNoDayThatIsStillToCome)
{
    DiarySheet sheet = emptySheet(copiedPlan(), marchDay(4));
    EXPECT_EQ(sheet.restOfWeek(), std::nullopt);
    EXPECT_EQ(minutesOn(sheet, marchDay(4)), 20);
    EXPECT_EQ(minutesOn(sheet, marchDay(5)), -1);
}

TEST(DiarySheet, LeavesAWeekToThePaperWhereThePatientChoseTheDays)
{
    Plan plan = copiedPlan();
    plan.blocks.front().schedule = DaysPerWeek{3};
    DiarySheet sheet = emptySheet(plan);
    EXPECT_EQ(sheet.restOfWeek(), DiaryRefusal::daysAreFree);
    EXPECT_TRUE(sheet.diary().days.empty());
    EXPECT_EQ(sheet.asPrescribed(), std::nullopt); // the day that is ticked
    EXPECT_EQ(minutesOn(sheet, marchDay(2)), 20);
}

TEST(DiarySheet, CopiesOfTheDayAboveTheMinutesAndNothingElse)
{
    DiarySheet sheet = emptySheet(copiedPlan(2));
    typeSigns(sheet, "18");
    sheet.nextField(true);
    typeSigns(sheet, "42");
    sheet.nextField(true);
    typeSigns(sheet, "6");
    sheet.goTo({.day = marchDay(2), .session = 2});
    typeSigns(sheet, "0");
    sheet.goToField(DiaryField::skin);
    sheet.type('2');
    sheet.setRemark("red");
    sheet.goTo({.day = marchDay(3)});
    EXPECT_EQ(sheet.copyAbove(), std::nullopt);
    const WrittenDay& tuesday = sheet.diary().on(marchDay(3));
    EXPECT_EQ(tuesday.sessions.at(1), (WrittenSession{.time = Milliseconds(18min)}));
    EXPECT_EQ(tuesday.sessions.at(2), (WrittenSession{.time = Milliseconds(0min)}));
    EXPECT_EQ(tuesday.skin, std::nullopt);
    EXPECT_EQ(tuesday.remark, "");
    EXPECT_EQ(sheet.place().session, 2) << "Enter goes on below";
    sheet.goTo({.day = marchDay(9)});
    EXPECT_EQ(sheet.copyAbove(), DiaryRefusal::nothingAbove) << "the first of its week";
}

TEST(DiarySheet, AmplitudeOfEachChannelAndComfortStayNotKnownUntilTyped)
{
    DiarySheet sheet = emptySheet(copiedPlan(1, 2));
    sheet.asPrescribed();
    EXPECT_TRUE(sheet.diary().on(marchDay(2)).sessions.at(1).amplitudes.empty());
    sheet.nextField(true);
    typeSigns(sheet, "38");
    sheet.nextField(true);
    typeSigns(sheet, "41.5");
    sheet.nextField(true);
    EXPECT_EQ(sheet.place().field, DiaryField::comfort);
    typeSigns(sheet, "10");
    const WrittenSession& session = sheet.diary().on(marchDay(2)).sessions.at(1);
    EXPECT_EQ(session.amplitudes.at(11), Amplitude::fromCount(38'000));
    EXPECT_EQ(session.amplitudes.at(12), Amplitude::fromCount(41'500));
    EXPECT_EQ(session.comfort, 10);
    EXPECT_EQ(session.time, Milliseconds(20min));
}

TEST(DiarySheet, SkinHasFourAnswersAndAsksForThePadAboveNought)
{
    DiarySheet sheet = emptySheet(copiedPlan());
    sheet.goToField(DiaryField::skin);
    sheet.type('0');
    EXPECT_EQ(sheet.diary().on(marchDay(2)).skin, Skin::nothing);
    EXPECT_EQ(sheet.place().field, DiaryField::skin);
    sheet.type('3');
    EXPECT_EQ(sheet.diary().on(marchDay(2)).skin, Skin::blisterOrBurn);
    EXPECT_EQ(sheet.place().field, DiaryField::pad);
    sheet.setPad("lower pad");
    EXPECT_EQ(sheet.diary().on(marchDay(2)).skinPad, "lower pad");
    sheet.goToField(DiaryField::skin);
    sheet.type('4');
    EXPECT_EQ(sheet.diary().on(marchDay(2)).skin, Skin::blisterOrBurn) << "there is no 4";
    sheet.type('0');
    EXPECT_EQ(sheet.diary().on(marchDay(2)).skinPad, "") << "nothing lies under no mark";
}

TEST(DiarySheet, AnExtraSessionOpensWhereSheTypes)
{
    DiarySheet sheet = emptySheet(copiedPlan());
    sheet.goTo({.day = marchDay(7)});
    EXPECT_EQ(sheet.linesOf(marchDay(7)), 1);
    typeSigns(sheet, "20");
    sheet.goTo({.day = marchDay(2)});
    EXPECT_EQ(sheet.linesOf(marchDay(7)), 1) << "it stays open";
    EXPECT_EQ(sheet.linesOf(marchDay(8)), 0);
    sheet.asPrescribed();
    EXPECT_EQ(sheet.openExtra(), std::nullopt); // +
    typeSigns(sheet, "15");
    EXPECT_EQ(minutesOn(sheet, marchDay(2), 2), 15);
}

TEST(DiarySheet, EmptyingTheMinutesTakesTheSessionOut)
{
    DiarySheet sheet = emptySheet(copiedPlan());
    sheet.asPrescribed();
    sheet.nextField(true);
    typeSigns(sheet, "38");
    sheet.empty();
    EXPECT_EQ(minutesOn(sheet, marchDay(2)), 20) << "only the amplitude went";
    sheet.goTo({.day = marchDay(2)});
    sheet.empty();
    EXPECT_TRUE(sheet.diary().days.empty());
}

TEST(DiarySheet, ReceivedThroughIsSetMovedAndWithdrawn)
{
    DiarySheet sheet = emptySheet(copiedPlan());
    EXPECT_EQ(sheet.withdrawReceived(), DiaryRefusal::nothingReceived);
    sheet.goTo({.day = marchDay(15)});
    EXPECT_EQ(sheet.receivedThroughHere(), std::nullopt);
    EXPECT_EQ(sheet.diary().receivedThrough, marchDay(15));
    EXPECT_TRUE(sheet.diary().days.empty()) << "a date is no entry";
    EXPECT_EQ(sheet.withdrawReceived(), std::nullopt);
    EXPECT_EQ(sheet.diary().receivedThrough, std::nullopt);
}

TEST(DiarySheet, TabGoesThroughAllFieldsOfADayAndOnToTheNext)
{
    DiarySheet sheet = emptySheet(copiedPlan());
    std::vector<DiaryField> fields;
    for (int i = 0; i < 6; ++i) {
        fields.push_back(sheet.place().field);
        EXPECT_TRUE(sheet.nextField(true));
    }
    EXPECT_EQ(fields, (std::vector{DiaryField::minutes, DiaryField::amplitude, DiaryField::comfort,
                                   DiaryField::skin, DiaryField::remark, DiaryField::minutes}));
    sheet.goTo({.day = marchDay(2)});
    EXPECT_FALSE(sheet.nextField(false)) << "before the first field Tab leaves";
    sheet.goTo({.day = marchDay(29), .field = DiaryField::remark});
    EXPECT_FALSE(sheet.nextField(true)) << "and behind the last";
}

TEST(DiarySheet, ArrowsGoByDayAndByWeekAndPagesFollowOneAnother)
{
    Plan plan = copiedPlan();
    plan.blocks.front().weeks = 6;
    DiarySheet sheet = emptySheet(plan, marchDay(31));
    EXPECT_EQ(sheet.form().pages(), 2);
    sheet.goTo({.day = marchDay(4)});
    sheet.moveDays(7);
    EXPECT_EQ(sheet.place().day, marchDay(11));
    sheet.moveDays(-1);
    EXPECT_EQ(sheet.place().day, marchDay(10));
    EXPECT_EQ(sheet.page(), 0);
    sheet.turnPage(1);
    EXPECT_EQ(sheet.page(), 1);
    EXPECT_EQ(sheet.place().day, marchDay(30)); // week 5
    sheet.turnPage(1);
    EXPECT_EQ(sheet.page(), 1) << "there is no third";
}

TEST(DiarySheet, BeginsAtTheFirstSessionThatIsNotWrittenAndNotReceived)
{
    CourseRecords records = copiedRecords(copiedPlan());
    WrittenDiary diary;
    diary.receivedThrough = marchDay(8); // Tuesday of week 1 missed, and known so
    diary.put(marchDay(9), {.sessions = {{1, {.time = Milliseconds(20min)}}}});
    const DiarySheet sheet(diaryFormOf(records, {}, marchDay(29)), diary);
    EXPECT_EQ(sheet.place().day, marchDay(10));
}

} // namespace
} // namespace quadrille::test
