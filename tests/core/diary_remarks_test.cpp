// SPDX-License-Identifier: GPL-3.0-or-later
// What is said of an entry, and what keeps it from being saved.
#include "tests/core/copied_diary.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::test
{
namespace
{

using namespace std::chrono_literals;
using testing::ElementsAre;
using testing::IsEmpty;

std::vector<DiaryRemarkKind> kindsOn(const WrittenDay& written, Date day = marchDay(2),
                                     Date today = marchDay(29))
{
    const DiarySheet sheet = emptySheet(copiedPlan(), today);
    std::vector<DiaryRemarkKind> kinds;
    for (const DiaryRemark& remark : remarksOn(sheet.form(), day, written)) {
        kinds.push_back(remark.kind);
    }
    return kinds;
}

WrittenDay session(WrittenSession written, int number = 1)
{
    return {.sessions = {{number, std::move(written)}}};
}

TEST(DiaryRemarks, OfAnEntryAsPrescribedThereAreNone)
{
    EXPECT_THAT(kindsOn(session({.time = Milliseconds(20min), .comfort = 10})), IsEmpty());
    EXPECT_THAT(kindsOn(session({.time = Milliseconds(0min), .comfort = 0})), IsEmpty());
}

TEST(DiaryRemarks, ASessionCannotLastLongerThanTheUnitRuns)
{
    EXPECT_THAT(kindsOn(session({.time = Milliseconds(60min)})),
                ElementsAre(DiaryRemarkKind::overUse));
    EXPECT_THAT(kindsOn(session({.time = Milliseconds(61min)})),
                ElementsAre(DiaryRemarkKind::overTimer));
}

TEST(DiaryRemarks, SitesInTurnHaveTheTimerOnceEach)
{
    Plan plan = copiedPlan(1, 2);
    plan.blocks.front().siteOrder = SiteOrder::oneAfterAnother;
    const DiarySheet sheet = emptySheet(plan);
    EXPECT_THAT(remarksOn(sheet.form(), marchDay(2), session({.time = Milliseconds(40min)})),
                IsEmpty()); // twice 20 min
    EXPECT_EQ(sheet.form().find(marchDay(2))->longest, Milliseconds(120min));
}

TEST(DiaryRemarks, AnAmplitudeOverTheUnitIsWrongAndOneOverTheCeilingIsSeen)
{
    const auto with = [](std::int64_t microamperes) {
        return session({.time = Milliseconds(20min),
                        .amplitudes = {{11, Amplitude::fromCount(microamperes)}}});
    };
    EXPECT_THAT(kindsOn(with(60'000)), IsEmpty());
    EXPECT_THAT(kindsOn(with(60'500)), ElementsAre(DiaryRemarkKind::overCeiling));
    EXPECT_THAT(kindsOn(with(100'500)), ElementsAre(DiaryRemarkKind::overUnit));
    EXPECT_FALSE(keepsFromSaving(DiaryRemarkKind::overCeiling)) << "what was done is recorded";
    EXPECT_TRUE(keepsFromSaving(DiaryRemarkKind::overUnit));
}

TEST(DiaryRemarks, ComfortEndsAtTenAndMinutesBelongToEverySession)
{
    EXPECT_THAT(kindsOn(session({.time = Milliseconds(20min), .comfort = 11})),
                ElementsAre(DiaryRemarkKind::comfortOutside));
    EXPECT_THAT(kindsOn(session({.comfort = 5})), ElementsAre(DiaryRemarkKind::minutesMissing));
}

TEST(DiaryRemarks, ASkinMarkIsSeenFromTheNextDayOn)
{
    for (const auto& [skin, marks] :
         {std::pair(Skin::nothing, 0), std::pair(Skin::goneWithinTheHour, 0),
          std::pair(Skin::thereNextDay, 1), std::pair(Skin::blisterOrBurn, 1)}) {
        EXPECT_EQ(kindsOn({.skin = skin}).size(), static_cast<std::size_t>(marks));
    }
    EXPECT_FALSE(keepsFromSaving(DiaryRemarkKind::skinMark));
}

TEST(DiaryRemarks, ExtraSessionsAreOverUse)
{
    EXPECT_THAT(kindsOn(session({.time = Milliseconds(20min)}, 2)),
                ElementsAre(DiaryRemarkKind::extraSession));
    EXPECT_THAT(kindsOn(session({.time = Milliseconds(20min)}), marchDay(7)),
                ElementsAre(DiaryRemarkKind::extraSession));
}

TEST(DiaryRemarks, ADayToComeAndOneAfterTheEndCannotBeSaved)
{
    EXPECT_THAT(kindsOn(session({.time = Milliseconds(20min)}), marchDay(5), marchDay(4)),
                ElementsAre(DiaryRemarkKind::dayToCome));
    CourseRecords ended = copiedRecords(copiedPlan());
    ended.course.endDate = marchDay(4);
    const auto remarks = remarksOn(diaryFormOf(ended, {}, marchDay(29)), marchDay(5),
                                   session({.time = Milliseconds(20min)}));
    EXPECT_EQ(remarks.front().kind, DiaryRemarkKind::outsideCourse);
}

TEST(DiaryRemarks, AfterTheLastWeekTheUnitRunsNoLongerAndGivesNoMore)
{
    // Monday of week 5; the plan has four weeks.
    const auto onMonday = [](const WrittenDay& written) {
        return kindsOn(written, marchDay(30), marchDay(31));
    };
    EXPECT_THAT(onMonday(session({.time = Milliseconds(60min)})),
                ElementsAre(DiaryRemarkKind::extraSession));
    EXPECT_THAT(onMonday(session({.time = Milliseconds(61min)})),
                ElementsAre(DiaryRemarkKind::overTimer));
    EXPECT_THAT(onMonday(session({.time = Milliseconds(20min),
                                  .amplitudes = {{11, Amplitude::fromCount(100'500)}}})),
                ElementsAre(DiaryRemarkKind::overUnit, DiaryRemarkKind::extraSession));
}

TEST(DiaryRemarks, ASessionThatStandsDoesNotKeepWhatIsSaidOfItsDayFromBeingSaved)
{
    const DiarySheet sheet = emptySheet(copiedPlan());
    WrittenDiary base;
    base.put(marchDay(2), session({.time = Milliseconds(90min)})); // the unit runs 60 min
    WrittenDay written = base.on(marchDay(2));
    written.skin = Skin::goneWithinTheHour;
    written.remark = "warm";
    WrittenDiary diary = base;
    diary.put(marchDay(2), written);
    EXPECT_THAT(remarksInTheWay(sheet.form(), base, diary), IsEmpty());
    written.sessions[2].time = Milliseconds(61min);
    diary.put(marchDay(2), written);
    const auto second = remarksInTheWay(sheet.form(), base, diary);
    ASSERT_EQ(second.size(), 1U);
    EXPECT_EQ(second.front().place.session, 2);
    written.sessions.erase(2);
    written.sessions[1].time = Milliseconds(91min);
    diary.put(marchDay(2), written);
    EXPECT_EQ(remarksInTheWay(sheet.form(), base, diary).size(), 1U) << "it was changed";
}

TEST(DiaryRemarks, WhatWasOnRecordDoesNotKeepTheRestFromBeingSaved)
{
    const DiarySheet sheet = emptySheet(copiedPlan());
    WrittenDiary base;
    base.put(marchDay(2), session({.time = Milliseconds(90min)}));
    WrittenDiary diary = base;
    diary.put(marchDay(3), session({.time = Milliseconds(20min)}));
    EXPECT_THAT(remarksInTheWay(sheet.form(), base, diary), IsEmpty());
    diary.put(marchDay(4), session({.time = Milliseconds(90min)}));
    const auto inTheWay = remarksInTheWay(sheet.form(), base, diary);
    ASSERT_EQ(inTheWay.size(), 1U);
    EXPECT_EQ(inTheWay.front().place.day, marchDay(4));
}

} // namespace
} // namespace quadrille::test
