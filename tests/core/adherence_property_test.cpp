// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold of the adherence of any course, over courses put together by chance. The seed of a
// failing course is printed; RandomCourse(seed) makes it again.
#include "tests/core/random_course.h"

#include <array>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::test;
using namespace std::chrono_literals;

namespace
{

constexpr std::uint64_t firstSeed = 20260302;
constexpr int courses = 1500;

template <class Property>
void forRandomCourses(Property property)
{
    for (std::uint64_t seed = firstSeed; seed < firstSeed + courses; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        RandomCourse course(seed);
        property(course);
        if (testing::Test::HasFailure()) {
            return;
        }
    }
}

AdherenceFigures figuresOf(const RandomCourse& course)
{
    return figuresBetween(courseAsLived(course.records, {}, course.asOf), course.all().from,
                          course.all().to);
}

using Shares = std::array<std::optional<Share>, 4>;
Shares sharesOf(const AdherenceFigures& figures)
{
    return {figures.session, figures.time, figures.contractions, figures.onTime};
}

/// A figure that does not exist adds nothing.
Share orNothing(const std::optional<Share>& share)
{
    return share.value_or(Share{0, 0});
}

void expectNotLower(const std::optional<Share>& after, const std::optional<Share>& before)
{
    if (before) {
        ASSERT_TRUE(after);
        EXPECT_GE(after->part * before->whole, before->part * after->whole);
    }
}

/// A day up to today, and the length of its sessions; nothing where no block is in force.
struct SomeDay {
    Date day;
    Milliseconds length{};
};
std::optional<SomeDay> someDayOf(RandomCourse& course)
{
    const auto lived = courseAsLived(course.records, {}, course.asOf);
    std::vector<const LivedDay*> days;
    for (const LivedDay& day : lived.days) {
        if (day.asked && day.day <= course.asOf) {
            days.push_back(&day);
        }
    }
    if (days.empty()) {
        return std::nullopt;
    }
    const auto place = course.between(0, static_cast<std::int64_t>(days.size()) - 1);
    const LivedDay& day = *days[static_cast<std::size_t>(place)];
    const Plan& plan = course.records.plans[day.asked->block.plan];
    const auto sitting =
        Sitting::of(plan.blocks[day.asked->block.block], plan.stimulator.rampHabit);
    return SomeDay{day.day, sitting->whole().time};
}

} // namespace

TEST(AnyCourse, IsSometimesKnownInPartAndSometimesDoneInPart)
{
    int withFigures = 0;
    int inPart = 0;
    int open = 0;
    forRandomCourses([&](const RandomCourse& course) {
        const AdherenceFigures figures = figuresOf(course);
        withFigures += figures.session ? 1 : 0;
        inPart += figures.session && figures.session->part > 0 &&
                          figures.session->part < figures.session->whole
                      ? 1
                      : 0;
        open += figures.sessions.known() > 0 && figures.sessions.notKnownYet > 0 ? 1 : 0;
    });
    EXPECT_GT(withFigures, courses / 2) << "else the properties below say little";
    EXPECT_GT(inPart, courses / 2);
    EXPECT_GT(open, courses / 4);
}

TEST(AnyCourse, IsNeverDoneByMoreThanTheWhole)
{
    forRandomCourses([](const RandomCourse& course) {
        for (const auto& share : sharesOf(figuresOf(course))) {
            if (share) {
                EXPECT_GT(share->whole, 0);
                EXPECT_GE(share->part, 0);
                EXPECT_LE(share->part, share->whole);
            }
        }
    });
}

TEST(AnyCourse, LosesNoSessionAdherenceByADoneSession)
{
    forRandomCourses([](RandomCourse& course) {
        const auto day = someDayOf(course);
        if (!day) {
            return;
        }
        const AdherenceFigures before = figuresOf(course);
        const std::int64_t least = (day->length.count() * 90 + 99) / 100;
        const Milliseconds time(course.between(least, 2 * day->length.count()));
        course.records.entries.push_back(course.entryOn(day->day, time));
        const AdherenceFigures after = figuresOf(course);
        expectNotLower(after.session, before.session);
        EXPECT_GE(after.sessions.done, before.sessions.done);
        EXPECT_EQ(after.sessionsDelivered.value(), before.sessionsDelivered.value_or(0) + 1);
    });
}

TEST(AnyCourse, LosesNoDoseAdherenceByAWholeSession)
{
    forRandomCourses([](RandomCourse& course) {
        const auto day = someDayOf(course);
        if (!day) {
            return;
        }
        const Shares before = sharesOf(figuresOf(course));
        course.records.entries.push_back(course.entryOn(day->day, day->length));
        const Shares after = sharesOf(figuresOf(course));
        for (std::size_t i = 0; i < after.size(); ++i) {
            expectNotLower(after[i], before[i]);
        }
    });
}

TEST(AnyCourse, IsNotChangedByDaysOfWhichNothingIsKnown)
{
    forRandomCourses([](RandomCourse& course) {
        const AdherenceFigures before = figuresOf(course);
        course.asOf += std::chrono::days(course.between(1, 40));
        const AdherenceFigures after = figuresOf(course);
        EXPECT_EQ(sharesOf(after), sharesOf(before));
        EXPECT_EQ(after.sessions.missed, before.sessions.missed);
        EXPECT_EQ(after.overUse, before.overUse);
        EXPECT_EQ(after.longestGap, before.longestGap);
        EXPECT_EQ(after.sessions.notKnownYet + after.sessions.toCome,
                  before.sessions.notKnownYet + before.sessions.toCome);
    });
}

TEST(AnyCourse, MissesNothingWithoutADiaryUnlessItSaysSo)
{
    forRandomCourses([](RandomCourse& course) {
        course.records.receipts.clear();
        std::erase_if(course.records.entries,
                      [](const DiaryEntry& entry) { return entry.duration == 0ms; });
        EXPECT_EQ(figuresOf(course).sessions.missed, 0);
    });
}

TEST(AnyCourse, AddsUpOverPartsOfAnInterval)
{
    forRandomCourses([](RandomCourse& course) {
        const auto lived = courseAsLived(course.records, {}, course.asOf);
        const Date from = course.dayAfterStart(course.between(-10, 60));
        const Date middle = from + std::chrono::days(course.between(0, 40));
        const Date to = middle + std::chrono::days(course.between(1, 40));
        const auto first = figuresBetween(lived, from, middle);
        const auto second = figuresBetween(lived, middle + std::chrono::days(1), to);
        const auto both = figuresBetween(lived, from, to);
        SessionCounts sum = first.sessions;
        sum += second.sessions;
        EXPECT_EQ(sum, both.sessions);
        for (std::size_t i = 0; i < sharesOf(both).size(); ++i) {
            const Share a = orNothing(sharesOf(first)[i]);
            const Share b = orNothing(sharesOf(second)[i]);
            EXPECT_EQ((Share{a.part + b.part, a.whole + b.whole}), orNothing(sharesOf(both)[i]));
        }
        EXPECT_EQ(first.overUse.value_or(OverUse{}).time + second.overUse.value_or(OverUse{}).time,
                  both.overUse.value_or(OverUse{}).time);
    });
}

TEST(AnyCourse, IsTheSumOfItsWeeksAndOfItsBlocks)
{
    forRandomCourses([](const RandomCourse& course) {
        const Adherence adherence = adherenceOf(course.records, {}, course.all(), course.asOf);
        SessionCounts weeks;
        for (const WeekAdherence& week : adherence.weeks) {
            weeks += week.figures.sessions;
        }
        SessionCounts blocks;
        for (const BlockAdherence& block : adherence.blocks) {
            blocks += block.figures.sessions;
        }
        const SessionCounts& all = adherence.interval.sessions;
        EXPECT_EQ(weeks.prescribed(), all.prescribed());
        EXPECT_EQ(weeks.done, all.done);
        EXPECT_EQ(blocks.prescribed(), all.prescribed());
        EXPECT_EQ(blocks.done, all.done);
    });
}

TEST(AnyCourse, HasAllMinutesEitherDeliveredOrAsOverUse)
{
    forRandomCourses([](const RandomCourse& course) {
        Milliseconds reported{};
        for (const DiaryEntry& entry : course.records.entries) {
            reported += entry.duration;
        }
        const AdherenceFigures figures = figuresOf(course);
        EXPECT_EQ(orNothing(figures.time).part + figures.overUse.value_or(OverUse{}).time.count(),
                  reported.count());
    });
}

TEST(AnyCourse, DoesNotDependOnTheOrderOfItsRecords)
{
    forRandomCourses([](RandomCourse& course) {
        const AdherenceFigures before = figuresOf(course);
        course.shuffle(course.records.entries);
        course.shuffle(course.records.plans);
        course.shuffle(course.records.pauses);
        EXPECT_EQ(figuresOf(course), before);
    });
}

/// Counted again day by day, for plans with weekdays and one session a day: all that is written
/// here is the rule itself.
TEST(AnyCourse, CountsLikeAWalkThroughTheDays)
{
    forRandomCourses([](RandomCourse& course) {
        CourseRecords& records = course.records;
        for (Plan& plan : records.plans) {
            for (Block& block : plan.blocks) {
                block.schedule =
                    WeekdaySet::fromBits(static_cast<unsigned>(course.between(1, 127)));
                block.sessionsPerDay = 1;
                block.siteOrder = SiteOrder::together;
                block.sites.resize(1);
                block.sites.front().settings.sessionLength = 20min;
            }
        }
        int done = 0;
        int known = 0;
        for (Date day = course.all().from; day <= course.asOf; day += std::chrono::days(1)) {
            const bool paused = std::ranges::any_of(
                records.pauses, [&](const Pause& pause) { return contains(pause, day); });
            if (paused || prescriptionOn(records.course, records.plans, day).sessions == 0) {
                continue;
            }
            const bool isDone = std::ranges::any_of(records.entries, [&](const DiaryEntry& entry) {
                return entry.day == day && entry.duration >= 18min;
            });
            const bool hasEntry = std::ranges::count(records.entries, day, &DiaryEntry::day) > 0;
            const bool received =
                !records.receipts.empty() && day <= records.receipts.front().throughDate;
            done += isDone ? 1 : 0;
            known += hasEntry || received ? 1 : 0;
        }
        EXPECT_EQ(orNothing(figuresOf(course).session), (Share{done, known}));
    });
}
