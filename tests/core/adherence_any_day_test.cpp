// SPDX-License-Identifier: GPL-3.0-or-later
// Weeks of blocks with a number of days a week, which are counted by the week. How to read a
// picture says week_picture.h, the figures below it picture_figures.h.
#include "tests/core/picture_figures.h"

#include <gtest/gtest.h>

using namespace quadrille::test;

TEST(AnyDayAdherence, LeavesTheDaysToThePatient)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  .
        Tue  D
        Wed  D
        Thu  .
        Fri  .
        Sat  D
        Sun  .
        = sessions 3 of 3
        = minutes 60 of 60
        = missed 0
        = over-use 0 sessions 0 min
        = gap 2 days
        = weeks 1 of 1)");
}

TEST(AnyDayAdherence, CountsWhatTheWeekLacksAndMarksNoDayAsMissed)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  .
        Tue  D
        Wed  .
        Thu  .
        Fri  p
        Sat  .
        Sun  .
        = sessions 1 of 3
        = partly 1
        = missed 1
        = minutes 30 of 60
        = day Sun 2026-03-08 not prescribed)");
}

TEST(AnyDayAdherence, ShowsSevenOutlinesBeforeTheWeek)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        today Mon 2026-03-02
        week 1
        Mon  o
        Tue  o
        Wed  o
        Thu  o
        Fri  o
        Sat  o
        Sun  o
        = sessions none
        = to come 3)");
}

TEST(AnyDayAdherence, KeepsTheOutlinesOfUnusedDaysUntilTheWeekEnds)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        received Tue 2026-03-03
        today Thu 2026-03-05
        week 1
        Mon  D
        Tue  o
        Wed  ?
        Thu  o
        Fri  o
        Sat  o
        Sun  o
        = sessions 1 of 1
        = missed 0
        = to come 2
        = weeks none)");
}

TEST(AnyDayAdherence, AsksForNothingMoreOnceTheWeekIsFull)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        received Wed 2026-03-04
        today Thu 2026-03-05
        week 1
        Mon  D
        Tue  D
        Wed  D
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 3 of 3
        = to come 0
        = weeks 1 of 1)");
}

TEST(AnyDayAdherence, CountsADayMoreThanTheWeekAsksForAsExtra)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  D
        Wed  .
        Thu  D
        Fri  x
        Sat  .
        Sun  .
        = sessions 3 of 3
        = minutes 60 of 60
        = over-use 1 session 20 min
        = last 7 days 3
        = last 14 days 4
        = day Fri 2026-03-06 extra)");
}

TEST(AnyDayAdherence, TakesTheLongestSessionsOfTheWeek)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 2 days a week, 20 min
        entry Mon 2026-03-02: 10 min
        entry Wed 2026-03-04: 20 min
        entry Fri 2026-03-06: 25 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  x
        Tue  .
        Wed  D
        Thu  .
        Fri  D
        Sat  .
        Sun  .
        = sessions 2 of 2
        = minutes 40 of 40
        = over-use 1 session 15 min)");
}

TEST(AnyDayAdherence, CountsOnlyTheSessionsThatADayAsksFor)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 2 days a week, 2 times a day, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  DDx
        Tue  .
        Wed  .
        Thu  D
        Fri  .
        Sat  .
        Sun  .
        = sessions 3 of 4
        = missed 1
        = over-use 1 session 20 min)");
}

TEST(AnyDayAdherence, LetsTheSessionsOfTheWeekFallOnMoreDays)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 2 days a week, 2 times a day, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  DD
        Tue  .
        Wed  D
        Thu  .
        Fri  D
        Sat  .
        Sun  .
        = sessions 4 of 4
        = over-use 0 sessions 0 min)");
}

TEST(AnyDayAdherence, KnowsNothingOfAPastWeekWithoutADiary)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        today Mon 2026-03-09
        week 1
        Mon  ?
        Tue  ?
        Wed  ?
        Thu  ?
        Fri  ?
        Sat  ?
        Sun  ?
        = sessions none
        = missed 0
        = not known 3)");
}

TEST(AnyDayAdherence, MissesNothingBeforeTheWholeWeekIsKnown)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        received Wed 2026-03-04
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  .
        Thu  ?
        Fri  ?
        Sat  ?
        Sun  ?
        = sessions 1 of 1
        = missed 0
        = not known 2
        = gap 2 days
        = weeks none)");
}

TEST(AnyDayAdherence, CountsThePartOfAWeekBeforeItsEndByWhatWasDone)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        days Mon 2026-03-02 to Thu 2026-03-05
        week 1
        Mon  D
        Tue  .
        Wed  D
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 2 of 2
        = missed 0
        = weeks none)");
}

TEST(AnyDayAdherence, CountsWhatAWeekLacksOnItsLastDay)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        days Fri 2026-03-06 to Sun 2026-03-08
        week 1
        Mon  D
        Tue  .
        Wed  D
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 0 of 1
        = missed 1
        = minutes 0 of 20
        = weeks none)");
}

TEST(AnyDayAdherence, AsksAPartWeekForItsShare)
{
    // Four of seven days are left: 3 × 4 / 7 = 1.7, so two.
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        pause Mon 2026-03-02 to Wed 2026-03-04
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  z
        Tue  z
        Wed  z
        Thu  D
        Fri  .
        Sat  D
        Sun  .
        = sessions 2 of 2
        = missed 0)");
}

TEST(AnyDayAdherence, AsksAWeekWithOnePausedDayForItsShare)
{
    // Six of seven days are left: 5 × 6 / 7 = 4.3, so four.
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 5 days a week, 20 min
        pause Wed 2026-03-04 to Wed 2026-03-04
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  D
        Wed  z
        Thu  D
        Fri  .
        Sat  .
        Sun  .
        = sessions 3 of 4
        = missed 1)");
}

TEST(AnyDayAdherence, SharesAWeekBetweenTwoPlans)
{
    // Three days of "3 a week" ask for 3 × 3 / 7 = 1.3, so one; then four days of every day.
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 3 days a week, 20 min
        plan 2 from Thu 2026-03-05: 1 weeks daily, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  .
        Wed  .
        Thu  D
        Fri  D
        Sat  m
        Sun  D
        = sessions 4 of 5
        = missed 1
        = block 1 1 of 1
        = block 2 3 of 4)");
}

TEST(AnyDayAdherence, CountsBothPartsOfAWeekBetweenTwoPlansOfAnyDays)
{
    // 4 × 3 / 7 = 1.7, so two; 4 × 4 / 7 = 2.3, so two: four together, as in a whole week.
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks 4 days a week, 20 min
        plan 2 from Thu 2026-03-05: 1 weeks 4 days a week, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  D
        Wed  x
        Thu  .
        Fri  D
        Sat  .
        Sun  .
        = sessions 3 of 4
        = block 1 2 of 2
        = block 2 1 of 2
        = over-use 1 session 20 min)");
}
