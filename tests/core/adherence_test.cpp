// SPDX-License-Identifier: GPL-3.0-or-later
// What a picture of weeks cannot say: thresholds of the practice, records withdrawn, what stands
// beside a day.
#include "tests/core/week_picture.h"
#include "tests/support/fixed_clock.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::test;
using tests::day;

TEST(Adherence, TakesThresholdsFromThePractice)
{
    const WeekPicture picture = readPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Tue Wed Thu, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  D
        Wed  p
        Thu  m
        Fri  .
        Sat  .
        Sun  .)");
    const auto of = [&](const AdherenceRules& rules) {
        return adherenceOf(picture.records, rules, picture.interval, picture.asOf);
    };
    EXPECT_EQ(of({.sessionDonePercent = 90}).interval.session, (Share{2, 4}));
    EXPECT_EQ(of({.sessionDonePercent = 50}).interval.session, (Share{3, 4}));
    EXPECT_EQ(of({.sessionDonePercent = 51}).interval.session, (Share{2, 4}));
    EXPECT_EQ(of({.weekPercent = 50}).weeksReaching, (Share{1, 1}));
    EXPECT_EQ(of({.weekPercent = 51}).weeksReaching, (Share{0, 1}));
}

TEST(Adherence, LeavesOutWhatWasWithdrawn)
{
    WeekPicture picture = readPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        pause Fri 2026-03-06 to Fri 2026-03-06
        received Sun 2026-03-08
        visit Wed 2026-03-04
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  D
        Thu  .
        Fri  z
        Sat  .
        Sun  .)");
    CourseRecords& records = picture.records;
    records.pauses.front().withdrawn = true;
    records.followUps.front().withdrawn = true;
    records.entries.front().withdrawn = true;
    const auto now = [&] { return adherenceOf(records, {}, picture.interval, picture.asOf); };
    EXPECT_EQ(now().interval.session, (Share{1, 3}));
    EXPECT_EQ(now().lastFollowUp, std::nullopt);
    records.receipts.front().withdrawn = true;
    EXPECT_EQ(now().knownThrough, std::nullopt);
    EXPECT_EQ(now().interval.session, (Share{1, 1}));
}

TEST(Adherence, SaysWhereContractionsComeFrom)
{
    const WeekPicture picture = readPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        entry Mon 2026-03-02: 20 min, 70 contractions
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  p
        Thu  .
        Fri  m
        Sat  .
        Sun  .)");
    const AdherenceFigures figures =
        adherenceOf(picture.records, {}, picture.interval, picture.asOf).interval;
    EXPECT_EQ(figures.contractionsReported, 1);
    EXPECT_EQ(figures.contractionsComputed, 1);
}

TEST(Adherence, KeepsSkinAndRemarkBesideTheDay)
{
    WeekPicture picture = readPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  .
        Thu  .
        Fri  .
        Sat  .
        Sun  .)");
    DiaryDay reported;
    reported.day = day(2026, 3, 2);
    reported.skin = Skin::thereNextDay;
    reported.skinPad = "lower pad";
    reported.remark = "Red until Tuesday";
    DiaryDay later = reported;
    later.day = day(2026, 3, 11); // after today
    picture.records.days = {later, reported};
    const CourseAsLived lived = courseAsLived(picture.records, {}, picture.asOf);
    const LivedDay* monday = lived.find(day(2026, 3, 2));
    ASSERT_NE(monday, nullptr);
    EXPECT_EQ(monday->standing, DayStanding::done);
    EXPECT_EQ(monday->skin, Skin::thereNextDay);
    EXPECT_EQ(monday->skinPad, "lower pad");
    EXPECT_EQ(monday->remark, "Red until Tuesday");
    EXPECT_EQ(lived.find(day(2026, 3, 3))->skin, std::nullopt);
    EXPECT_EQ(lived.find(day(2026, 3, 11)), nullptr);
}

TEST(Adherence, CountsSessionsWithoutALengthButNoDose)
{
    WeekPicture picture = readPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  p
        Thu  .
        Fri  m
        Sat  .
        Sun  .)");
    picture.records.plans.front().blocks.front().sites.clear();
    const AdherenceFigures figures =
        adherenceOf(picture.records, {}, picture.interval, picture.asOf).interval;
    EXPECT_EQ(figures.session, (Share{2, 3})) << "any minutes count where no length is known";
    EXPECT_EQ(figures.time, std::nullopt);
    EXPECT_EQ(figures.contractions, std::nullopt);
    EXPECT_EQ(figures.onTime, std::nullopt);
}
