// SPDX-License-Identifier: GPL-3.0-or-later
// When a session counts as done, and for how much; counted by hand. How to read a picture says
// week_picture.h, the figures below it picture_figures.h. In 20 min lie 75 contractions and 300 s
// on time.
#include "tests/core/picture_figures.h"

#include <gtest/gtest.h>

using namespace quadrille::test;

TEST(SessionsOfADay, CountsASessionAsDoneFromNineTenthsOfItsLength)
{
    // 18 min = 67 whole cycles of 16 s and 8 s more: 68 contractions of 4 s. 17 min: 63 and 12 s.
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed, 20 min
        entry Mon 2026-03-02: 18 min
        entry Wed 2026-03-04: 17 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  p
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 1 of 2
        = partly 1
        = missed 0
        = minutes 35 of 40
        = contractions 132 of 150
        = on time 528 of 600)");
}

TEST(SessionsOfADay, HoldsEachSessionAgainstItsOwnLength)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed, 30 min
        entry Mon 2026-03-02: 27 min
        entry Wed 2026-03-04: 26 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  p
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 1 of 2
        = minutes 53 of 60)");
}

TEST(SessionsOfADay, TakesContractionsFromTheDiaryWhereTheyWereReported)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        entry Mon 2026-03-02: 20 min, 60 contractions
        entry Wed 2026-03-04: 20 min, 90 contractions
        entry Fri 2026-03-06: 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  D
        Thu  .
        Fri  D
        Sat  .
        Sun  .
        = sessions 3 of 3
        = minutes 60 of 60
        = contractions 210 of 225
        = on time 900 of 900)");
}

TEST(SessionsOfADay, GivesNoCreditForASessionThatRanLonger)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed, 20 min
        entry Mon 2026-03-02: 35 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  m
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 1 of 2
        = minutes 20 of 40
        = contractions 75 of 150
        = over-use 0 sessions 15 min)");
}

TEST(SessionsOfADay, GivesNoCreditForARestDay)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  x
        Wed  m
        Thu  x
        Fri  D
        Sat  .
        Sun  .
        = sessions 2 of 3
        = minutes 40 of 60
        = over-use 2 sessions 40 min
        = last 7 days 3
        = gap 2 days
        = day Tue 2026-03-03 extra)");
}

TEST(SessionsOfADay, KnowsOfASessionOfNoughtMinutesThatItWasMissed)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        entry Mon 2026-03-02: 0 min
        entry Tue 2026-03-03: 0 min
        today Mon 2026-03-09
        week 1
        Mon  m
        Tue  .
        Wed  ?
        Thu  .
        Fri  ?
        Sat  .
        Sun  .
        = sessions 0 of 1
        = minutes 0 of 20
        = not known 2)");
}

TEST(SessionsOfADay, KnowsAReportedSessionBeforeTheDiaryComesBack)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  ?
        Thu  .
        Fri  ?
        Sat  .
        Sun  .
        = sessions 1 of 1
        = minutes 20 of 20
        = not known 2
        = over-use 0 sessions 0 min
        = gap none
        = weeks none)");
}

TEST(SessionsOfADay, CountsEachOfSeveralSessionsADay)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Tue Wed Thu, 2 times a day, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  DD
        Tue  Dm
        Wed  mm
        Thu  Dp
        Fri  .
        Sat  .
        Sun  .
        = sessions 4 of 8
        = partly 1
        = missed 3
        = minutes 90 of 160
        = day Mon 2026-03-02 done
        = day Tue 2026-03-03 partly
        = day Wed 2026-03-04 missed
        = day Thu 2026-03-05 partly)");
}

TEST(SessionsOfADay, CountsASessionMoreThanTheDayAsksForAsExtra)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Tue, 2 times a day, 20 min
        received Sun 2026-03-08
        today Sun 2026-03-08
        week 1
        Mon  DDx
        Tue  Dm
        Wed  .
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 3 of 4
        = over-use 1 session 20 min
        = last 7 days 4
        = day Mon 2026-03-02 done)");
}

TEST(SessionsOfADay, TakesTheLongestOfADayForThePrescribedOne)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon, 20 min
        entry Mon 2026-03-02: 5 min
        entry Mon 2026-03-02: 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  xD
        Tue  .
        Wed  .
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 1 of 1
        = minutes 20 of 20
        = over-use 1 session 5 min)");
}

TEST(SessionsOfADay, NeverMakesAWholeSessionOfTwoHalves)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon, 20 min
        entry Mon 2026-03-02: 10 min
        entry Mon 2026-03-02: 10 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  px
        Tue  .
        Wed  .
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 0 of 1
        = minutes 10 of 20
        = over-use 1 session 10 min
        = day Mon 2026-03-02 partly)");
}

TEST(SessionsOfADay, LeavesADayOpenOfWhichOneSessionIsNotKnown)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Tue, 2 times a day, 20 min
        entry Mon 2026-03-02: 20 min
        entry Tue 2026-03-03: 20 min
        today Tue 2026-03-03
        week 1
        Mon  D?
        Tue  Do
        Wed  .
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 2 of 2
        = not known 1
        = to come 1
        = day Mon 2026-03-02 not known
        = day Tue 2026-03-03 to come)");
}

TEST(SessionsOfADay, AddsUpTheTimesOfSitesInTurn)
{
    // 36 min: 75 contractions of the first site, then 16 min = 60 cycles of the second.
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min, 2 sites in turn
        entry Mon 2026-03-02: 40 min
        entry Wed 2026-03-04: 36 min
        entry Fri 2026-03-06: 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  D
        Thu  .
        Fri  p
        Sat  .
        Sun  .
        = sessions 2 of 3
        = minutes 96 of 120
        = contractions 360 of 450
        = on time 1440 of 1800)");
}

TEST(SessionsOfADay, CountsSitesAtOnceAsOneTime)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed, 20 min, 2 sites at once
        entry Mon 2026-03-02: 20 min
        entry Wed 2026-03-04: 10 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  p
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 1 of 2
        = minutes 30 of 40
        = contractions 113 of 150
        = on time 452 of 600)");
}
