// SPDX-License-Identifier: GPL-3.0-or-later
// Weeks of blocks with weekdays, counted by hand. How to read a picture says week_picture.h, the
// figures below it picture_figures.h. In 20 min lie 75 contractions and 300 s on time.
#include "tests/core/picture_figures.h"

#include <gtest/gtest.h>

using namespace quadrille::test;

TEST(WeekdayAdherence, IsWholeWhenEverySessionWasDone)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 2 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-15
        today Mon 2026-03-16
        week 1 2
        Mon  D D
        Tue  . .
        Wed  D D
        Thu  . .
        Fri  D D
        Sat  . .
        Sun  . .
        = sessions 6 of 6
        = minutes 120 of 120
        = contractions 450 of 450
        = on time 1800 of 1800
        = over-use 0 sessions 0 min
        = missed 0
        = gap 2 days
        = weeks 2 of 2)");
}

TEST(WeekdayAdherence, IsNoughtWhenTheDiaryCameBackEmpty)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-08
        today Mon 2026-03-09
        week 1
        Mon  m
        Tue  .
        Wed  m
        Thu  .
        Fri  m
        Sat  .
        Sun  .
        = sessions 0 of 3
        = minutes 0 of 60
        = contractions 0 of 225
        = missed 3
        = gap 7 days
        = last 7 days 0
        = weeks 0 of 1)");
}

TEST(WeekdayAdherence, HasNoFiguresWhileNoDiaryCameBack)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        today Mon 2026-03-09
        week 1
        Mon  ?
        Tue  .
        Wed  ?
        Thu  .
        Fri  ?
        Sat  .
        Sun  .
        = sessions none
        = minutes none
        = contractions none
        = on time none
        = over-use none
        = gap none
        = last 7 days none
        = last 14 days none
        = known 14 days none
        = weeks none
        = week 1 none
        = trend none
        = missed 0
        = not known 3)");
}

TEST(WeekdayAdherence, HasNoFiguresBeforeTheStart)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Wed Fri, 20 min
        today Sun 2026-03-01
        week 1
        Mon  o
        Tue  .
        Wed  o
        Thu  .
        Fri  o
        Sat  .
        Sun  .
        = sessions none
        = over-use none
        = since visit none
        = to come 3)");
}

TEST(WeekdayAdherence, NeverCountsWhatIsNotKnownAsMissed)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 3 weeks Mon Wed Fri, 20 min
        received Sun 2026-03-08
        today Wed 2026-03-18
        week 1 2 3
        Mon  D ? ?
        Tue  . . .
        Wed  m ? o
        Thu  . . .
        Fri  D ? o
        Sat  . . .
        Sun  . . .
        = sessions 2 of 3
        = minutes 40 of 60
        = missed 1
        = not known 4
        = to come 2
        = gap 3 days
        = weeks 0 of 1)");
}

TEST(WeekdayAdherence, StopsAtTheDayThroughWhichTheDiaryWasReceived)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Tue Wed Thu Fri, 20 min
        received Wed 2026-03-04
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  m
        Wed  D
        Thu  ?
        Fri  ?
        Sat  .
        Sun  .
        = sessions 2 of 3
        = not known 2
        = gap 1 day
        = weeks none
        = week 1 2 of 3)");
}

TEST(WeekdayAdherence, TakesTheLatestDayThroughWhichADiaryWasReceived)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Tue Wed Thu Fri, 20 min
        received Fri 2026-03-06
        received Tue 2026-03-03
        today Mon 2026-03-09
        week 1
        Mon  D
        Tue  m
        Wed  D
        Thu  m
        Fri  D
        Sat  .
        Sun  .
        = sessions 3 of 5
        = not known 0)");
}

TEST(WeekdayAdherence, KnowsNothingOfDaysAfterToday)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Tue Wed Thu Fri, 20 min
        received Fri 2026-03-06
        entry Fri 2026-03-06: 20 min
        today Wed 2026-03-04
        week 1
        Mon  D
        Tue  m
        Wed  m
        Thu  o
        Fri  o
        Sat  .
        Sun  .
        = sessions 1 of 3
        = missed 2
        = to come 2)");
}

TEST(WeekdayAdherence, TakesTodayAsKnownOnceTheDiaryIsReceivedThroughIt)
{
    expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon Tue Wed, 20 min
        received Tue 2026-03-03
        today Tue 2026-03-03
        week 1
        Mon  D
        Tue  m
        Wed  o
        Thu  .
        Fri  .
        Sat  .
        Sun  .
        = sessions 1 of 2
        = to come 1)");
}

TEST(WeekdayAdherence, CountsWeeksFromTheWeekdayOfTheStart)
{
    expectPicture(R"(
        start Thu 2026-03-05
        plan 1 from Thu 2026-03-05: 2 weeks Mon Tue Wed Thu Fri, 20 min
        received Wed 2026-03-18
        today Thu 2026-03-19
        week 1 2
        Thu  D D
        Fri  D D
        Sat  . .
        Sun  . .
        Mon  D m
        Tue  D m
        Wed  m D
        = sessions 7 of 10
        = week 1 4 of 5
        = week 2 3 of 5
        = weeks 1 of 2)");
}
