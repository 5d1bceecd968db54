// SPDX-License-Identifier: GPL-3.0-or-later
// Uses counted by hand from diaries that stand beside the check. Lives are common practice, no
// source.
#include "tests/support/fixed_clock.h"

#include "core/electrode_set.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille
{
namespace
{

using namespace std::chrono_literals;
using tests::day;

DiaryEntry entry(Date on, int session, Milliseconds length)
{
    DiaryEntry made;
    made.day = on;
    made.sessionNumber = session;
    made.duration = length;
    return made;
}

ElectrodeSet setOf(Date issued)
{
    ElectrodeSet set;
    set.issuedOn = issued;
    set.description = "right thigh";
    set.type = ElectrodeType::selfAdhesive;
    return set;
}

/// Two sessions on Monday 2 March, one cut short on Tuesday, a missed one on Wednesday, two on
/// Thursday, and one on Friday that was entered by mistake.
std::vector<DiaryEntry> aWeek()
{
    std::vector<DiaryEntry> diary{
        entry(day(2026, 3, 2), 1, 20min), entry(day(2026, 3, 2), 2, 20min),
        entry(day(2026, 3, 3), 1, 7min),  entry(day(2026, 3, 4), 1, 0min),
        entry(day(2026, 3, 5), 1, 20min), entry(day(2026, 3, 5), 2, 20min),
        entry(day(2026, 3, 6), 1, 20min)};
    diary.back().withdrawn = true;
    return diary;
}

TEST(ElectrodeWear, CountsSessionsDoneAndPartlyDoneButNotMissedOrWithdrawnOnes)
{
    const ElectrodeSet set = setOf(day(2026, 3, 2));
    EXPECT_EQ(wearOf(set, aWeek(), day(2026, 3, 8)).uses, 5); // 2 + 1 + 0 + 2 + 0
}

TEST(ElectrodeWear, IsKnownAsOfAnyDay)
{
    const ElectrodeSet set = setOf(day(2026, 3, 2));
    const std::vector<std::pair<Date, int>> asOf{{day(2026, 3, 1), 0}, {day(2026, 3, 2), 2},
                                                 {day(2026, 3, 3), 3}, {day(2026, 3, 4), 3},
                                                 {day(2026, 3, 5), 5}, {day(2026, 12, 31), 5}};
    for (const auto& [on, uses] : asOf) {
        EXPECT_EQ(wearOf(set, aWeek(), on).uses, uses) << isoDate(on);
    }
    EXPECT_FALSE(wearOf(set, aWeek(), day(2026, 3, 1)).inUse);
    EXPECT_TRUE(wearOf(set, aWeek(), day(2026, 3, 2)).inUse);
}

TEST(ElectrodeWear, CountsOnlyWhileTheSetWasInUse)
{
    ElectrodeSet late = setOf(day(2026, 3, 3));
    EXPECT_EQ(wearOf(late, aWeek(), day(2026, 3, 8)).uses, 3);
    ElectrodeSet early = setOf(day(2026, 3, 2));
    early.outOfUseOn = day(2026, 3, 3); // the sessions of that day are the new set's
    const ElectrodeWear wear = wearOf(early, aWeek(), day(2026, 3, 8));
    EXPECT_EQ(wear.uses, 2);
    EXPECT_FALSE(wear.inUse);
    EXPECT_TRUE(wearOf(early, aWeek(), day(2026, 3, 2)).inUse);
}

TEST(ElectrodeWear, ASetThatTakesOverCountsOnFromItsFirstDayAndNothingTwice)
{
    ElectrodeSet first = setOf(day(2026, 3, 2));
    first.outOfUseOn = day(2026, 3, 5);
    const ElectrodeSet second = setOf(day(2026, 3, 5));
    EXPECT_EQ(wearOf(first, aWeek(), day(2026, 3, 8)).uses +
                  wearOf(second, aWeek(), day(2026, 3, 8)).uses,
              5);
}

TEST(ElectrodeWear, IsDueAtTheLastUseOfItsLifeAndNotBefore)
{
    ElectrodeSet set = setOf(day(2026, 3, 2));
    set.life.uses = 5;
    EXPECT_FALSE(wearOf(set, aWeek(), day(2026, 3, 4)).replacementDue()); // 3 of 5
    EXPECT_TRUE(wearOf(set, aWeek(), day(2026, 3, 5)).replacementDue());  // 5 of 5
    set.life.uses = 6;
    EXPECT_FALSE(wearOf(set, aWeek(), day(2026, 3, 31)).replacementDue());
}

TEST(ElectrodeWear, IsDueByAgeEvenWithoutASession)
{
    ElectrodeSet set = setOf(day(2026, 1, 31));
    set.life.months = 1;
    const ElectrodeWear before = wearOf(set, {}, day(2026, 2, 27));
    EXPECT_EQ(before.tooOldFrom, day(2026, 2, 28)); // there is no 31 February
    EXPECT_FALSE(before.replacementDue());
    EXPECT_TRUE(wearOf(set, {}, day(2026, 2, 28)).replacementDue());
}

TEST(ElectrodeWear, NothingIsDueOfASetThatIsOutOfUseOrWithdrawn)
{
    ElectrodeSet set = setOf(day(2026, 1, 1));
    set.life.months = 1;
    ASSERT_TRUE(wearOf(set, {}, day(2026, 3, 1)).replacementDue());
    ElectrodeSet replaced = set;
    replaced.outOfUseOn = day(2026, 2, 20);
    EXPECT_FALSE(wearOf(replaced, {}, day(2026, 3, 1)).replacementDue());
    ElectrodeSet mistaken = set;
    mistaken.withdrawn = true;
    EXPECT_FALSE(wearOf(mistaken, {}, day(2026, 3, 1)).replacementDue());
    EXPECT_THAT(setsToReplace({replaced, set, mistaken}, {}, day(2026, 3, 1)),
                testing::ElementsAre(1U));
}

TEST(ElectrodeLife, CarbonRubberOutlastsSelfAdhesivePads) // common practice, no source
{
    const ElectrodeLife adhesive = usualLife(ElectrodeType::selfAdhesive);
    EXPECT_GE(adhesive.uses, 10); // trade information: 10 to 30 uses, or about 30 days
    EXPECT_LE(adhesive.uses, 30);
    EXPECT_EQ(adhesive.months, 1);
    for (const auto type : {ElectrodeType::carbonRubberSponge, ElectrodeType::carbonRubberGel}) {
        EXPECT_GT(usualLife(type).months, adhesive.months);
        EXPECT_FALSE(usualLife(type).uses);
    }
}

TEST(ElectrodeLife, ASetWithoutALifeIsNeverDue)
{
    ElectrodeSet set = setOf(day(2020, 1, 1));
    EXPECT_FALSE(wearOf(set, aWeek(), day(2026, 3, 8)).replacementDue());
}

TEST(MonthsLater, KeepsTheDayOrTakesTheLastOfAShorterMonth)
{
    EXPECT_EQ(monthsLater(day(2026, 3, 12), std::chrono::months(1)), day(2026, 4, 12));
    EXPECT_EQ(monthsLater(day(2027, 12, 31), std::chrono::months(2)),
              day(2028, 2, 29)); // a leap year
    EXPECT_EQ(monthsLater(day(2026, 11, 30), std::chrono::months(3)), day(2027, 2, 28));
    EXPECT_EQ(monthsLater(day(2026, 3, 12), std::chrono::months(12)), day(2027, 3, 12));
}

} // namespace
} // namespace quadrille
