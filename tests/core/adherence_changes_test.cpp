// SPDX-License-Identifier: GPL-3.0-or-later
// Other plans, pauses, ends and the calendar. How to read a picture says week_picture.h, the
// figures below it picture_figures.h.
#include "tests/core/picture_figures.h"

#include <gtest/gtest.h>

using namespace quadrille::test;

TEST(ChangingCourse, KeepsOldDaysUnderThePlanTheyWereLivedUnder)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 2 weeks Mon Wed Fri, 20 min
        plan 2 from Wed 2026-03-11: 2 weeks daily, 20 min
        received Sun 2026-03-15
        today Mon 2026-03-16
        week 1 2
        Mon  D D
        Tue  . .
        Wed  D D
        Thu  . m
        Fri  D D
        Sat  . D
        Sun  . D
        = sessions 8 of 9
        = block 1 4 of 4
        = block 2 4 of 5
        = block 3 none
        = week 2 5 of 6)");
}

TEST(ChangingCourse, HoldsSessionsAgainstTheLengthOfTheirOwnPlan)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 2 weeks Mon Wed Fri, 20 min
        plan 2 from Mon 2026-03-09: 2 weeks Mon Wed Fri, 30 min
        entry Mon 2026-03-09: 20 min
        entry Wed 2026-03-11: 30 min
        received Sun 2026-03-15
        today Mon 2026-03-16
        week 1 2
        Mon  D p
        Tue  . .
        Wed  D D
        Thu  . .
        Fri  D m
        Sat  . .
        Sun  . .
        = sessions 4 of 6
        = minutes 110 of 150)");
}

TEST(ChangingCourse, FollowsThePlanIssuedLastAmongThoseThatHaveBegun)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks daily, 20 min
        plan 2 from Sat 2026-03-07: 1 weeks daily, 2 times a day, 20 min
        plan 3 from Wed 2026-03-04: 1 weeks Mon Wed Fri Sat, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  m
        Wed  D
        Thu  .
        Fri  m
        Sat  D
        Sun  .
        = sessions 3 of 5
        = block 1 1 of 2
        = block 2 2 of 3
        = block 3 none)");
}

TEST(ChangingCourse, CountsEachBlockForItself)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min; 1 weeks Mon Tue Wed Thu, 10 min
        received Sun 2026-03-15
        today Mon 2026-03-16
        week 1 2
        Mon  D D
        Tue  . D
        Wed  m p
        Thu  . m
        Fri  D .
        Sat  . .
        Sun  . .
        = sessions 4 of 7
        = minutes 65 of 100
        = block 1 2 of 3
        = block 2 2 of 4)");
}

TEST(ChangingCourse, AsksForNothingInAPause)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 3 weeks Mon Wed Fri, 20 min
        pause Mon 2026-03-09 to Sun 2026-03-15
        received Sun 2026-03-22
        today Mon 2026-03-23
        week 1 2 3
        Mon  D z D
        Tue  . z .
        Wed  D z m
        Thu  . z .
        Fri  m z D
        Sat  . z .
        Sun  . z .
        = sessions 4 of 6
        = missed 2
        = week 2 none
        = weeks 0 of 2
        = gap 4 days
        = day Tue 2026-03-10 paused)");
}

TEST(ChangingCourse, CountsThePartOfAWeekThatIsNotPaused)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Tue Wed Thu Fri, 20 min
        pause Tue 2026-03-03 to Thu 2026-03-05
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  z
        Wed  z
        Thu  z
        Fri  D
        Sat  .
        Sun  .
        = sessions 2 of 2
        = weeks 1 of 1)");
}

TEST(ChangingCourse, StandsStillUntilFurtherNotice)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 2 weeks Mon Wed Fri, 20 min
        pause Thu 2026-03-05
        received Sun 2026-03-15
        today Mon 2026-03-16
        week 1 2
        Mon  D z
        Tue  . z
        Wed  m z
        Thu  z z
        Fri  z z
        Sat  z z
        Sun  z z
        = sessions 1 of 2
        = last 7 days 0)");
}

TEST(ChangingCourse, GivesNoCreditForASessionInAPause)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        pause Wed 2026-03-04 to Thu 2026-03-05
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  x
        Thu  z
        Fri  m
        Sat  .
        Sun  .
        = sessions 1 of 2
        = over-use 1 session 20 min
        = day Wed 2026-03-04 extra)");
}

TEST(ChangingCourse, AsksForNothingAfterItsLastDay)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 2 weeks Mon Wed Fri, 20 min
        ends Wed 2026-03-11
        received Sun 2026-03-15
        today Mon 2026-03-16
        week 1 2
        Mon  D D
        Tue  . .
        Wed  D m
        Thu  . .
        Fri  D .
        Sat  . x
        Sun  . .
        = sessions 4 of 5
        = over-use 1 session 20 min
        = gap 2 days)");
}

TEST(ChangingCourse, AsksForNothingAfterTheLastWeekOfThePlan)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-15
        today Mon 2026-03-16
        week 1 2
        Mon  D x
        Tue  . .
        Wed  D .
        Thu  . .
        Fri  D .
        Sat  . .
        Sun  . .
        = sessions 3 of 3
        = over-use 1 session 20 min
        = last 7 days 0
        = last 14 days 3
        = week 2 none)");
}

TEST(ChangingCourse, AsksForNothingBeforeTheFirstPlan)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Thu 2026-03-05: 1 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  .
        Tue  .
        Wed  .
        Thu  .
        Fri  D
        Sat  .
        Sun  .
        = sessions 1 of 1
        = gap 2 days)");
}

TEST(ChangingCourse, CountsTheTwentyNinthOfFebruary)
{
    expectPicture(R"(
        start Mon 2028-02-28
        plan 1 from Mon 2028-02-28: 1 weeks daily, 20 min
        received Sun 2028-03-05
        today Mon 2028-03-06
        week 1
        Mon  D
        Tue  D
        Wed  D
        Thu  m
        Fri  D
        Sat  D
        Sun  D
        = sessions 6 of 7
        = day Tue 2028-02-29 done
        = last 7 days 5)");
}

TEST(ChangingCourse, CountsAWeekInWhichTheClocksChange)
{
    // In many countries the clocks go forward on 29 March 2026.
    expectPicture(R"(
        start Mon 2026-03-23
        plan 1 from Mon 2026-03-23: 2 weeks daily, 20 min
        received Sun 2026-04-05
        today Mon 2026-04-06
        week 1 2
        Mon  D D
        Tue  D D
        Wed  D D
        Thu  D D
        Fri  D D
        Sat  D D
        Sun  D m
        = sessions 13 of 14
        = week 1 7 of 7
        = last 7 days 5
        = last 14 days 12)");
}

TEST(ChangingCourse, CountsOverTheTurnOfTheYear)
{
    expectPicture(R"(
        start Mon 2025-12-29
        plan 1 from Mon 2025-12-29: 1 weeks Mon Wed Thu, 20 min
        received Sun 2026-01-04
        today Mon 2026-01-05
        week 1
        Mon  D
        Tue  .
        Wed  m
        Thu  D
        Fri  .
        Sat  .
        Sun  .
        = sessions 2 of 3
        = gap 3 days)");
}
