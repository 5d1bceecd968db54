// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/examples.h"

#include "core/draft_preview.h"

#include <gtest/gtest.h>

using namespace quadrille;
using namespace quadrille::test;
using namespace std::chrono;

namespace
{

constexpr Date monday = sys_days(2026y / March / 2);
constexpr Date today = monday + days(10);

Course someCourse()
{
    Course course;
    course.startDate = monday;
    return course;
}

Draft draftOf(const std::vector<Block>& blocks)
{
    Draft draft;
    draft.stimulator = StimulatorId(1);
    draft.blocks = blocks;
    return draft;
}

Plan issuedPlan()
{
    Plan plan;
    plan.fromDate = monday;
    plan.stimulator = someStimulator();
    plan.stimulator.id = StimulatorId(1);
    plan.blocks = {someBlock()};
    return plan;
}

} // namespace

TEST(DraftPreview, OfACourseWithoutAPlanRunsFromItsStart)
{
    const auto plans =
        plansWithDraft({}, someCourse(), draftOf({someBlock()}), someStimulator(), today);
    ASSERT_EQ(plans.size(), 1U);
    EXPECT_EQ(plans[0].fromDate, monday);
    EXPECT_EQ(plans[0].stimulator, someStimulator());
}

TEST(DraftPreview, LeavesTheDaysLivedUnderTheIssuedPlan)
{
    Block changed = someBlock();
    changed.sessionsPerDay = 2;
    const auto plans =
        plansWithDraft({issuedPlan()}, someCourse(), draftOf({changed}), someStimulator(), today);
    ASSERT_EQ(plans.size(), 2U);
    EXPECT_EQ(plans[1].number, 2);
    EXPECT_EQ(plans[1].fromDate, today);
    EXPECT_EQ(planInForce(plans, today - days(1)), 0U);
    EXPECT_EQ(planInForce(plans, today), 1U);
}

TEST(DraftPreview, AddsNothingWhereTheDraftSaysTheSame)
{
    EXPECT_EQ(plansWithDraft({issuedPlan()}, someCourse(), draftOf({someBlock()}), someStimulator(),
                             today),
              std::vector<Plan>{issuedPlan()});
    EXPECT_TRUE(plansWithDraft({}, someCourse(), Draft(), std::nullopt, today).empty());
}

TEST(DraftPreview, SeesAnotherUnit)
{
    Draft draft = draftOf({someBlock()});
    draft.stimulator = StimulatorId(2);
    EXPECT_EQ(plansWithDraft({issuedPlan()}, someCourse(), draft, someStimulator(), today).size(),
              2U);
}
