// SPDX-License-Identifier: GPL-3.0-or-later
// Figures over several weeks: gaps, lately, since the last follow-up, weeks at the threshold and
// trend. How to read a picture says week_picture.h, the figures below it picture_figures.h.
#include "tests/core/picture_figures.h"

#include <gtest/gtest.h>

using namespace quadrille::test;

TEST(LongestGap, EndsWhereTheDiaryEnds)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 2 weeks Mon Wed Fri, 20 min
        received Tue 2026-03-10
        today Mon 2026-03-16
        week 1 2
        Mon  D m
        Tue  . .
        Wed  D ?
        Thu  . .
        Fri  m ?
        Sat  . .
        Sun  . .
        = gap 6 days)");
}

TEST(LongestGap, IsBrokenByAnExtraSession)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 2 weeks Mon Wed Fri, 20 min
        received Tue 2026-03-10
        today Mon 2026-03-16
        week 1 2
        Mon  D m
        Tue  . .
        Wed  D ?
        Thu  . .
        Fri  m ?
        Sat  . .
        Sun  x .
        = gap 3 days)");
}

TEST(LongestGap, IsNoneWithASessionOnEveryDay)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks daily, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  D
        Wed  p
        Thu  D
        Fri  D
        Sat  D
        Sun  D
        = sessions 6 of 7
        = gap 0 days)");
}

TEST(LongestGap, IsNotCountedOverWeeksWithoutAPlan)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        plan 2 from Mon 2026-03-16: 3 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-22
        today Mon 2026-03-23
        week 1 2 3
        Mon  D . m
        Tue  . . .
        Wed  D . m
        Thu  . . .
        Fri  m . D
        Sat  . . .
        Sun  . . .
        = sessions 3 of 6
        = gap 4 days)");
}

TEST(LastDays, AreNotKnownByADiaryFromBeforeTheStart)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-01
        today Tue 2026-03-03
        week 1
        Mon  ?
        Tue  .
        Wed  o
        Thu  .
        Fri  o
        Sat  .
        Sun  .
        = sessions none
        = last 7 days none
        = known 14 days none)");
}

TEST(LastDays, CountTodayAndTheDaysBeforeIt)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 3 weeks Mon Wed Fri, 20 min
        received Wed 2026-03-18
        today Wed 2026-03-18
        week 1 2 3
        Mon  D D D
        Tue  . . .
        Wed  D p D
        Thu  . . .
        Fri  D D o
        Sat  . x .
        Sun  . . .
        = last 7 days 4
        = last 14 days 7
        = known 14 days 5 of 6)");
}

TEST(LastKnownDays, GoBackFromTheDayThroughWhichTheDiaryIsKnown)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 4 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-15
        today Mon 2026-03-30
        week 1 2 3 4
        Mon  D m ? ?
        Tue  . . . .
        Wed  D m ? ?
        Thu  . . . .
        Fri  D D ? ?
        Sat  . . . .
        Sun  . . . .
        = last 7 days none
        = last 14 days none
        = known 14 days 4 of 6)");
}

TEST(SinceTheLastFollowUp, CountsFromTheDayOfTheVisit)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 3 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-22
        visit Wed 2026-03-11
        visit Wed 2026-03-04
        today Mon 2026-03-23
        week 1 2 3
        Mon  m m D
        Tue  . . .
        Wed  m D D
        Thu  . . .
        Fri  m D m
        Sat  . . .
        Sun  . . .
        = sessions 4 of 9
        = since visit 4 of 5)");
}

TEST(SinceTheLastFollowUp, LooksBackFromTodaysVisitToTheOneBefore)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 2 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-15
        visit Mon 2026-03-09
        visit Mon 2026-03-16
        today Mon 2026-03-16
        week 1 2
        Mon  m D
        Tue  . .
        Wed  m D
        Thu  . .
        Fri  m m
        Sat  . .
        Sun  . .
        = since visit 2 of 3)");
}

TEST(SinceTheLastFollowUp, CountsFromTheStartBeforeTheFirstVisit)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  m
        Thu  .
        Fri  D
        Sat  .
        Sun  .
        = since visit 2 of 3)");
}

TEST(WeeksAtTheThreshold, BeginAtFourOfFiveSessions)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 3 weeks Mon Tue Wed Thu Fri, 20 min
        received Sun 2026-03-22
        today Mon 2026-03-23
        week 1 2 3
        Mon  D D D
        Tue  D D D
        Wed  D D D
        Thu  D m D
        Fri  m m D
        Sat  . . .
        Sun  . x .
        = sessions 12 of 15
        = week 1 4 of 5
        = week 2 3 of 5
        = weeks 2 of 3)");
}

TEST(WeeksAtTheThreshold, AreOnlyThoseThatLieWholeInTheDaysAskedFor)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 3 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-22
        today Mon 2026-03-23
        days Wed 2026-03-04 to Thu 2026-03-19
        week 1 2 3
        Mon  m D D
        Tue  . . .
        Wed  D D D
        Thu  . . .
        Fri  D D m
        Sat  . . .
        Sun  . . .
        = sessions 7 of 7
        = week 1 2 of 2
        = week 3 2 of 2
        = weeks 1 of 1)");
}

TEST(Trend, SetsTheLastTwoKnownWeeksAgainstTheTwoBefore)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 5 weeks Mon Tue Wed Thu Fri, 20 min
        received Thu 2026-04-02
        today Mon 2026-04-06
        week 1 2 3 4 5
        Mon  D D D D D
        Tue  D D D D D
        Wed  D D D D D
        Thu  m m D D D
        Fri  m m m D ?
        Sat  . . . . .
        Sun  . . . . .
        = trend +30.0
        = weeks 2 of 4)");
}

TEST(Trend, PassesOverAPausedWeek)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 5 weeks Mon Wed Fri, 20 min
        pause Mon 2026-03-16 to Sun 2026-03-22
        received Sun 2026-04-05
        today Mon 2026-04-06
        week 1 2 3 4 5
        Mon  D D z D m
        Tue  . . z . .
        Wed  D D z m m
        Thu  . . z . .
        Fri  D m z D D
        Sat  . . z . .
        Sun  . . z . .
        = trend -33.3)");
}

TEST(Trend, IsNoneWithThreeKnownWeeks)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 4 weeks Mon Wed Fri, 20 min
        received Wed 2026-03-25
        today Mon 2026-03-30
        week 1 2 3 4
        Mon  D D D D
        Tue  . . . .
        Wed  D D D D
        Thu  . . . .
        Fri  D m m ?
        Sat  . . . .
        Sun  . . . .
        = trend none
        = weeks 1 of 3)");
}
