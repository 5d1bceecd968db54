// SPDX-License-Identifier: GPL-3.0-or-later
// The pictures of weeks that the tests of adherence are written in: they say what they show, and
// nothing is skipped that is not understood.
#include "tests/core/picture_figures.h"
#include "tests/core/week_picture.h"
#include "tests/support/fixed_clock.h"

#include <gtest/gtest-spi.h>
#include <gtest/gtest.h>
#include <stdexcept>

using namespace quadrille;
using namespace quadrille::test;
using namespace std::chrono_literals;
using tests::day;

namespace
{

const std::string facts = R"(
    start Wed 2026-03-04
    plan 1 from Wed 2026-03-04: 1 weeks Wed Fri, 2 times a day, 20 min; 3 weeks 4 days a week, 10 min, 2 sites in turn
    plan 2 from Mon 2026-03-09: 2 weeks daily, 25 min
    pause Tue 2026-03-10 to Wed 2026-03-11
    pause Tue 2026-03-17
    ends Fri 2026-03-20
    received Sun 2026-03-08
    visit Mon 2026-03-09
    entry Thu 2026-03-05: 7 min, 20 contractions
    entry Thu 2026-03-05: 8 min
    today Thu 2026-03-12
)";
const std::string squares = R"(
    week 1 2
    Wed  Dp z
    Thu  xx o
    Fri  mm o
    Sat  .  o
    Sun  .  o
    Mon  p  o
    Tue  z  z
)";

std::string complaintOf(const std::string& text)
{
    try {
        readPicture(text);
    } catch (const std::invalid_argument& complaint) {
        return complaint.what();
    }
    return {};
}

std::string with(const std::string& line)
{
    return facts + line + squares;
}

std::string replaced(std::string text, const std::string& what, const std::string& by)
{
    return text.replace(text.find(what), what.size(), by);
}

} // namespace

TEST(WeekPicture, SaysCoursePlansAndPauses)
{
    const WeekPicture picture = readPicture(facts + squares);
    const CourseRecords& records = picture.records;
    EXPECT_EQ(records.course.startDate, day(2026, 3, 4));
    EXPECT_EQ(records.course.endDate, day(2026, 3, 20));
    ASSERT_EQ(records.plans.size(), 2U);
    ASSERT_EQ(records.plans[0].blocks.size(), 2U);
    const Block& first = records.plans[0].blocks[0];
    EXPECT_EQ(first.weeks, 1);
    EXPECT_EQ(std::get<WeekdaySet>(first.schedule),
              WeekdaySet().with(std::chrono::Wednesday).with(std::chrono::Friday));
    EXPECT_EQ(first.sessionsPerDay, 2);
    EXPECT_EQ(first.sites.front().settings.sessionLength, 20min);
    const Block& second = records.plans[0].blocks[1];
    EXPECT_EQ(std::get<DaysPerWeek>(second.schedule).days, 4);
    EXPECT_EQ(second.siteOrder, SiteOrder::oneAfterAnother);
    EXPECT_EQ(second.sites.size(), 2U);
    EXPECT_EQ(records.plans[1].fromDate, day(2026, 3, 9));
    EXPECT_EQ(std::get<WeekdaySet>(records.plans[1].blocks[0].schedule), WeekdaySet::everyDay());
    ASSERT_EQ(records.pauses.size(), 2U);
    EXPECT_EQ(records.pauses[0].toDate, day(2026, 3, 11));
    EXPECT_EQ(records.pauses[1].toDate, std::nullopt);
}

TEST(WeekPicture, SaysWhatIsKnownAndWhen)
{
    const WeekPicture picture = readPicture(facts + squares);
    EXPECT_EQ(picture.records.receipts.front().throughDate, day(2026, 3, 8));
    EXPECT_EQ(picture.records.followUps.front().heldOn, day(2026, 3, 9));
    EXPECT_EQ(picture.asOf, day(2026, 3, 12));
    EXPECT_EQ(picture.weeks, 2);
    EXPECT_EQ(picture.interval.from, day(2026, 3, 4));
    EXPECT_EQ(picture.interval.to, day(2026, 3, 17)) << "all that is drawn";
    const WeekPicture shorter = readPicture(with("days Thu 2026-03-05 to Fri 2026-03-06\n"));
    EXPECT_EQ(shorter.interval.from, day(2026, 3, 5));
    EXPECT_EQ(shorter.interval.to, day(2026, 3, 6));
}

TEST(WeekPicture, PutsIntoTheDiaryWhatItsLettersSay)
{
    const WeekPicture picture = readPicture(facts + squares);
    std::vector<std::string> diary;
    for (const DiaryEntry& entry : picture.records.entries) {
        diary.push_back(isoDate(entry.day) + " " + std::to_string(entry.sessionNumber) + ": " +
                        std::to_string(entry.duration / 1s) + " s");
    }
    EXPECT_EQ(
        diary,
        (std::vector<std::string>{"2026-03-05 1: 420 s",    // the lines of their own
                                  "2026-03-05 2: 480 s",    //
                                  "2026-03-04 1: 1200 s",   // done, 20 min
                                  "2026-03-04 2: 600 s",    // partly: half of it
                                  "2026-03-09 1: 750 s"})); // half of the second plan's 25 min
    EXPECT_EQ(picture.records.entries.front().contractions, 20);
    EXPECT_EQ(picture.records.entries.back().contractions, std::nullopt);
}

TEST(WeekPicture, TakesSitesInTurnForTheirSum)
{
    const WeekPicture picture = readPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon, 10 min, 3 sites in turn
        week 1
        Mon D
        Tue x
        Wed .
        Thu .
        Fri .
        Sat .
        Sun .)");
    ASSERT_EQ(picture.records.entries.size(), 2U);
    EXPECT_EQ(picture.records.entries.front().duration, 30min);
}

TEST(WeekPicture, DrawsWhatItReads)
{
    const WeekPicture picture = readPicture(facts + squares);
    EXPECT_EQ(picture.squares,
              "Wed Dp z\nThu xx o\nFri mm o\nSat . o\nSun . o\nMon p o\nTue z z\n");
    EXPECT_EQ(drawWeeks(courseAsLived(picture.records, {}, picture.asOf), 2), picture.squares);
}

TEST(WeekPicture, NamesItsFigures)
{
    const WeekPicture picture = readPicture(
        facts + squares +
        "= sessions 1 of 5\n= over-use 2 sessions 15 min\n= last 14 days 5\n= trend none\n"
        "= week 1 1 of 5\n= block 2 none\n= day Wed 2026-03-04 partly\n");
    EXPECT_EQ(picture.expected, (std::vector<ExpectedFigure>{{"sessions", "1 of 5"},
                                                             {"over-use", "2 sessions 15 min"},
                                                             {"last 14 days", "5"},
                                                             {"trend", "none"},
                                                             {"week 1", "1 of 5"},
                                                             {"block 2", "none"},
                                                             {"day Wed 2026-03-04", "partly"}}));
}

TEST(WeekPicture, FailsOnAWrongSquareAndOnAWrongFigure)
{
    EXPECT_NONFATAL_FAILURE(expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon, 20 min
        today Mon 2026-03-09
        week 1
        Mon m
        Tue .
        Wed .
        Thu .
        Fri .
        Sat .
        Sun .)"),
                            "Mon ?");
    EXPECT_NONFATAL_FAILURE(expectPicture(R"(
        start Mon 2026-03-02
        plan 1 from Mon 2026-03-02: 1 weeks Mon, 20 min
        today Mon 2026-03-09
        week 1
        Mon ?
        Tue .
        Wed .
        Thu .
        Fri .
        Sat .
        Sun .
        = sessions 0 of 1)"),
                            "none");
}

TEST(WeekPicture, ComplainsOfWhatItDoesNotUnderstand)
{
    EXPECT_EQ(complaintOf(facts + squares), "");
    EXPECT_NE(complaintOf(with("holiday Mon 2026-03-09\n")), "");
    EXPECT_NE(complaintOf(with("visit Tue 2026-03-09\n")), "") << "that day is a Monday";
    EXPECT_NE(complaintOf(with("visit Mon 2026-02-30\n")), "");
    EXPECT_NE(complaintOf(with("visit Mon 2026-03-09 early\n")), "");
    EXPECT_NE(complaintOf(with("entry Mon 2026-03-09: many min\n")), "");
    EXPECT_NE(complaintOf(with("entry Mon 2026-03-09: 20\n")), "");
    EXPECT_NE(complaintOf(with("plan 3 from Mon 2026-03-09: 2 weeks 3 days\n")), "");
    EXPECT_NE(complaintOf(with("plan 3 from Mon 2026-03-09: 2 weeks daily, 2 sites in row\n")), "");
    EXPECT_NE(complaintOf(facts + squares + "= happiness 1 of 5\n"), "");
}

TEST(WeekPicture, ComplainsOfRowsThatDoNotFit)
{
    EXPECT_NE(complaintOf(facts), "") << "no rows";
    EXPECT_NE(complaintOf(facts + replaced(squares, "Thu", "Tue")), "");
    EXPECT_NE(complaintOf(facts + replaced(squares, "Tue  z  z", "Tue  z")), "");
    EXPECT_NE(complaintOf(facts + replaced(squares, "Tue  z  z", "")), "");
    EXPECT_NE(complaintOf(facts + squares + "Wed . .\n"), "");
    EXPECT_NE(complaintOf(facts + replaced(squares, "mm", "mM")), "");
    EXPECT_NE(complaintOf(facts + replaced(squares, "week 1 2", "week 1 3")), "");
}
