// SPDX-License-Identifier: GPL-3.0-or-later
// What a plan asks of each muscle, week by week, before anything has been done.
#pragma once

#include "core/course.h"
#include "core/fatigue_memory.h"
#include "core/plan.h"
#include "core/plan_figures.h"
#include "core/sitting.h"

#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// One week of one site.
struct ProjectedSite {
    std::string muscle;
    Side side = Side::right;
    /// Sessions, contractions, on time, charge of the week; nothing where the settings cannot run.
    std::optional<WeekFigures> week = std::nullopt;
    /// Last / first contraction of one session as the model has it; nothing outside the model. Only
    /// between weeks that differ in off time or session length may it be compared.
    std::optional<FatigueRatio> fatigue = std::nullopt;
    /// Total on time against the week before, as a share: 0.25 is a quarter more. Nothing in the
    /// site's first week and after a week without on time.
    std::optional<double> step = std::nullopt;
};

struct ProjectedWeek {
    CourseWeek week;
    std::vector<ProjectedSite> sites; ///< in the block's order; empty: nothing prescribed
    std::int64_t sessions = 0;
    /// Of all sittings, counted as in plan_figures.h; nothing where the settings cannot run.
    std::optional<SittingDose> dose = SittingDose();
};

/// All weeks of a plan's blocks, as whole weeks from course week 1.
std::vector<ProjectedWeek> projectPlan(const std::vector<Block>& blocks,
                                       const Stimulator& stimulator, FatigueMemory& memory,
                                       const FatigueOptions& options = {});
/// The same without asking the model: no week has a fatigue ratio, and it takes no time.
std::vector<ProjectedWeek> projectWithoutModel(const std::vector<Block>& blocks,
                                               const Stimulator& stimulator);

/// Everything that a plan asks for.
struct PlanTotals {
    std::int64_t sessions = 0;
    std::optional<SittingDose> dose = SittingDose(); ///< nothing where a week has none
    /// Of the muscle that is given most; nothing while the charge of one week of it is not known.
    std::optional<TotalCharge> charge = std::nullopt;
};
PlanTotals totalsOf(const std::vector<ProjectedWeek>& weeks);

/// All weeks of a course, each day under the plan in force on it, to the last week of any plan or
/// the course's end. Where the plan changes inside a week, the figures of both parts are added and
/// the fatigue ratio is that of the later part. A number of days per week counts at most the days
/// that the plan was in force.
std::vector<ProjectedWeek> projectCourse(const Course& course, const std::vector<Plan>& plans,
                                         FatigueMemory& memory, const FatigueOptions& options = {});

} // namespace quadrille
