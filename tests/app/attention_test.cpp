// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/attention.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::app;
using testing::ElementsAre;
using testing::IsEmpty;

namespace
{

/// Monday 9 February 2026.
const Date start = *dateFromIso("2026-02-09");

Plan planOf(int number, int weeks, Date from)
{
    Plan plan;
    plan.number = number;
    plan.fromDate = from;
    plan.blocks.resize(1);
    plan.blocks[0].weeks = weeks;
    return plan;
}

db::CaseloadRow running(std::vector<Plan> plans = {}, bool hasDraft = false)
{
    db::CaseloadRow row;
    row.course = Course{};
    row.course->startDate = start;
    row.plans = std::move(plans);
    row.hasDraft = hasDraft;
    row.screeningSigned = true;
    return row;
}

std::vector<AttentionReason> reasonsOf(const db::CaseloadRow& row, Date today)
{
    std::vector<AttentionReason> reasons;
    for (const Attention& attention : attentionOf(courseFactsOf(row), today)) {
        reasons.push_back(attention.reason);
    }
    return reasons;
}

} // namespace

TEST(Attention, ARunningCourseWithoutAPlanComesFirst)
{
    EXPECT_THAT(reasonsOf(running(), start), ElementsAre(AttentionReason::noPlan));
    EXPECT_THAT(reasonsOf(running({}, true), start),
                ElementsAre(AttentionReason::noPlan, AttentionReason::draftNotIssued));
}

TEST(Attention, AScreeningThatIsNotSignedOrPastItsTermComesBeforeThePlan)
{
    db::CaseloadRow row = running({}, true);
    row.screeningValidThrough = start;
    EXPECT_THAT(reasonsOf(row, start),
                ElementsAre(AttentionReason::noPlan, AttentionReason::draftNotIssued));
    EXPECT_THAT(reasonsOf(row, start + std::chrono::days(1)),
                ElementsAre(AttentionReason::screeningTooOld, AttentionReason::noPlan,
                            AttentionReason::draftNotIssued));
    row.screeningSigned = false;
    row.screeningValidThrough.reset();
    EXPECT_THAT(reasonsOf(row, start),
                ElementsAre(AttentionReason::screeningNotSigned, AttentionReason::noPlan,
                            AttentionReason::draftNotIssued));
}

TEST(Attention, ADraftWaitsBesideThePlanInForce)
{
    EXPECT_THAT(reasonsOf(running({planOf(1, 8, start)}, true), start),
                ElementsAre(AttentionReason::draftNotIssued));
}

// Four weeks from Monday 9 February end on Sunday 8 March; the last week begins on 2 March.
TEST(Attention, TheLastWeekRunsFromItsFirstDayToItsLast)
{
    const db::CaseloadRow row = running({planOf(1, 4, start)});
    EXPECT_EQ(lastPlannedDay(*courseFactsOf(row)), dateFromIso("2026-03-08"));
    EXPECT_THAT(reasonsOf(row, *dateFromIso("2026-03-01")), IsEmpty());
    EXPECT_THAT(reasonsOf(row, *dateFromIso("2026-03-02")), ElementsAre(AttentionReason::lastWeek));
    EXPECT_THAT(reasonsOf(row, *dateFromIso("2026-03-08")), ElementsAre(AttentionReason::lastWeek));
    EXPECT_THAT(reasonsOf(row, *dateFromIso("2026-03-09")), ElementsAre(AttentionReason::planOver));
}

// Nothing is prescribed any more: that weighs more than a draft that waits.
TEST(Attention, APlanThatEndedComesBeforeADraft)
{
    EXPECT_THAT(reasonsOf(running({planOf(1, 4, start)}, true), *dateFromIso("2026-03-09")),
                ElementsAre(AttentionReason::planOver, AttentionReason::draftNotIssued));
    EXPECT_THAT(reasonsOf(running({planOf(1, 4, start)}, true), *dateFromIso("2026-03-08")),
                ElementsAre(AttentionReason::draftNotIssued, AttentionReason::lastWeek));
}

TEST(Attention, ThePlanIssuedLastDecidesWhenTheWeeksAreOver)
{
    const Date later = *dateFromIso("2026-03-02");
    const db::CaseloadRow row = running({planOf(2, 12, later), planOf(1, 4, start)});
    EXPECT_THAT(reasonsOf(row, *dateFromIso("2026-03-10")), IsEmpty());
    EXPECT_EQ(newestPlan(row.plans), 0U);
}

TEST(Attention, EndedCoursesAndPatientsWithoutOneWaitForNothing)
{
    db::CaseloadRow ended = running({}, true);
    ended.course->endDate = start + std::chrono::days(3);
    EXPECT_THAT(reasonsOf(ended, start + std::chrono::days(3)),
                ElementsAre(AttentionReason::noPlan, AttentionReason::draftNotIssued))
        << "on its last day a course still runs";
    EXPECT_THAT(reasonsOf(ended, start + std::chrono::days(4)), IsEmpty());
    EXPECT_THAT(reasonsOf(db::CaseloadRow{}, start), IsEmpty());
}
