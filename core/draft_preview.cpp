// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/draft_preview.h"

#include <algorithm>
#include <utility>

namespace quadrille
{

std::vector<Plan> plansWithDraft(std::vector<Plan> plans, const Course& course, const Draft& draft,
                                 const std::optional<Stimulator>& unit, Date today)
{
    const bool differs =
        !draft.blocks.empty() && (plans.empty() || plans.back().blocks != draft.blocks ||
                                  plans.back().stimulator.id != draft.stimulator);
    if (!differs) {
        return plans;
    }
    Plan plan;
    plan.course = course.id;
    plan.number = plans.empty() ? 1 : plans.back().number + 1;
    plan.fromDate = plans.empty() ? course.startDate : std::max(today, course.startDate);
    plan.blocks = draft.blocks;
    plan.stimulator = unit.value_or(Stimulator{});
    plans.push_back(std::move(plan));
    return plans;
}

} // namespace quadrille
