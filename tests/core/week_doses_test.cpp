// SPDX-License-Identifier: GPL-3.0-or-later
// Weeks counted by hand: 4 s on, 12 s off, 20 min are 75 contractions and 300 s on time; half of a
// session, 10 min, is 37 whole cycles of 16 s and 8 s more, with a whole on phase: 38 and 152 s.
#include "tests/core/examples.h"
#include "tests/core/week_picture.h"

#include "core/week_doses.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::literals;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

std::vector<WeekDose> dosesOf(const WeekPicture& picture)
{
    return weekDoses(picture.records, {}, picture.asOf);
}

const std::string twoWeeks = "start Mon 2026-03-02\n"
                             "plan 1 from Mon 2026-03-02: 2 weeks Mon Wed Fri, 20 min\n"
                             "received Sun 2026-03-08\n"
                             "today Wed 2026-03-11\n"
                             "week 1 2\n"
                             "Mon  D ?\n"
                             "Tue  x .\n"
                             "Wed  p o\n"
                             "Thu  . .\n"
                             "Fri  m o\n"
                             "Sat  . .\n"
                             "Sun  . .\n";

} // namespace

TEST(WeekDoses, CountWhatWasDoneWithExtraSessions)
{
    const auto weeks = dosesOf(readPicture(twoWeeks));
    ASSERT_EQ(weeks.size(), 2U);
    EXPECT_EQ(weeks[0].prescribed->contractions, 3 * 75);
    EXPECT_EQ(weeks[0].prescribed->onTime, 900s);
    EXPECT_EQ(weeks[0].delivered->contractions, 75 + 75 + 38);
    EXPECT_EQ(weeks[0].delivered->onTime, 300s + 300s + 152s);
}

TEST(WeekDoses, DoNotKnowAWeekWhoseDiaryIsNotBack)
{
    const auto weeks = dosesOf(readPicture(twoWeeks));
    EXPECT_EQ(weeks[1].prescribed->contractions, 3 * 75);
    EXPECT_FALSE(weeks[1].delivered) << "not known is not nought";
}

TEST(WeekDoses, CountAMissedWeekAsNought)
{
    WeekPicture picture = readPicture(twoWeeks);
    picture.records.entries.clear();
    EXPECT_EQ(dosesOf(picture)[0].delivered, SittingDose());
}

TEST(WeekDoses, TakeContractionsAsThePatientReportedThem)
{
    WeekPicture picture = readPicture(twoWeeks);
    picture.records.entries.front().contractions = 70;
    const int others = 75 + 38;
    EXPECT_EQ(dosesOf(picture)[0].delivered->contractions, 70 + others);
}

TEST(WeekDoses, CountNoMoreThanAWholeSittingHowManyContractionsEverAreReported)
{
    WeekPicture picture = readPicture(twoWeeks);
    picture.records.entries.front().contractions = 90; // a whole sitting has 75
    EXPECT_EQ(dosesOf(picture)[0].delivered->contractions, 75 + 75 + 38);
}

TEST(WeekDoses, PrescribeNothingOnPausedDays)
{
    WeekPicture picture = readPicture(twoWeeks);
    Pause pause;
    pause.fromDate = picture.records.course.startDate + std::chrono::days(7);
    pause.toDate = pause.fromDate + std::chrono::days(3);
    picture.records.pauses = {pause};
    EXPECT_EQ(dosesOf(picture)[1].prescribed->contractions, 75) << "Friday alone is left";
}

TEST(WeekDoses, CountDaysOfChoiceByTheWeek)
{
    WeekPicture picture = readPicture(twoWeeks);
    picture.records.plans.front().blocks.front().schedule = DaysPerWeek{5};
    EXPECT_EQ(dosesOf(picture)[1].prescribed->contractions, 5 * 75);
}

TEST(WeekDoses, ShowTheHighestAmplitudePlannedAndReported)
{
    WeekPicture picture = readPicture(twoWeeks);
    std::vector<Site>& sites = picture.records.plans.front().blocks.front().sites;
    sites.push_back(sites.front());
    sites[0].settings.amplitude.lastTolerated = 40_mA;
    sites[1].settings.amplitude.ceiling = 55_mA;
    picture.records.entries.front().amplitudes = {{1, 38_mA}, {2, 47_mA}};
    const auto weeks = dosesOf(picture);
    EXPECT_EQ(weeks[0].planned, 55_mA);
    EXPECT_EQ(weeks[0].reported, 47_mA);
    EXPECT_FALSE(weeks[1].reported);
}

TEST(WeekDoses, HaveNoFiguresForSettingsThatCannotRun)
{
    WeekPicture picture = readPicture(twoWeeks);
    picture.records.plans.front().blocks.front().sites.front().settings.offTime = 0s;
    const auto weeks = dosesOf(picture);
    EXPECT_FALSE(weeks[0].prescribed);
    EXPECT_FALSE(weeks[0].delivered);
}
