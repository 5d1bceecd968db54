// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/block_fatigue.h"

#include "core/body_region.h"
#include "core/session_timing.h"

#include <algorithm>
#include <set>
#include <utility>

namespace quadrille
{

namespace
{

/// The settings as the model runs them; nothing where they cannot run.
std::optional<Settings> settingsForModel(const Settings& settings, const Stimulator& unit)
{
    const Result<SessionTiming> timing = sessionTiming(settings, unit.rampHabit, unit.cycleStart);
    return timing ? std::optional(withoutLead(settings, *timing)) : std::nullopt;
}

/// A ratio, or why there is none.
struct Asked {
    std::optional<NoFatigueRatio> missing = std::nullopt;
    std::optional<FatigueRatio> ratio = std::nullopt;
};

Asked ask(const Settings& settings, const Stimulator& unit, FatigueMemory& memory,
          const FatigueOptions& options)
{
    const auto run = settingsForModel(settings, unit);
    if (!run) {
        return {NoFatigueRatio::cannotRun};
    }
    const auto prediction = memory.predict(*run, unit.rampHabit, options);
    if (!prediction || !prediction->lastToFirst) {
        return {NoFatigueRatio::outsideModel};
    }
    return {std::nullopt, prediction->lastToFirst};
}

FatigueStep stepOf(const Settings& now, const Settings& before, const Stimulator& unit,
                   FatigueMemory& memory, const FatigueOptions& options)
{
    FatigueStep step;
    step.comparability = modelComparability(before, unit.rampHabit, now, unit.rampHabit,
                                            options.phaseDurationRecruits);
    step.limits = modelLimits(now, options);
    // What must not be compared is not asked for: the model would only mislead.
    if (!step.comparability.isAllowed()) {
        step.missing = NoFatigueRatio::modelMisleads;
        return step;
    }
    const Asked askedNow = ask(now, unit, memory, options);
    const Asked askedBefore = ask(before, unit, memory, options);
    step.missing = askedNow.missing ? askedNow.missing : askedBefore.missing;
    if (!step.missing) {
        step.now = askedNow.ratio;
        step.before = askedBefore.ratio;
    }
    return step;
}

/// The site on the muscle of `wanted` in the block of a week; null where it has none.
struct SiteInForce {
    const Site* site = nullptr;
    const Stimulator* unit = nullptr;
};

SiteInForce siteInWeek(const Course& course, const std::vector<Plan>& plans, CourseWeek week,
                       const Site& wanted)
{
    const Date lastDay = firstDayOf(course.startDate, week) + std::chrono::days(6);
    const auto inForce = planInForce(plans, lastDay);
    if (!inForce) {
        return {};
    }
    const Plan& plan = plans[*inForce];
    const auto block = blockOf(plan.blocks, week);
    if (!block) {
        return {};
    }
    const std::vector<Site>& sites = plan.blocks[*block].sites;
    const auto found =
        std::ranges::find_if(sites, [&](const Site& site) { return isSameSite(site, wanted); });
    return found != sites.end() ? SiteInForce{&*found, &plan.stimulator} : SiteInForce{};
}

} // namespace

bool isSameSite(const Site& one, const Site& other)
{
    return isSameMuscle(one.muscle, other.muscle) && one.side == other.side;
}

std::optional<std::size_t> sameSiteBefore(const Block& block, std::size_t site, const Block& before)
{
    const auto isSame = [&](const Site& other) { return isSameSite(other, block.sites[site]); };
    auto nth = std::count_if(block.sites.begin(),
                             block.sites.begin() + static_cast<std::ptrdiff_t>(site), isSame);
    for (std::size_t i = 0; i < before.sites.size(); ++i) {
        if (isSame(before.sites[i]) && nth-- == 0) {
            return i;
        }
    }
    return std::nullopt;
}

std::vector<FatigueStep> fatigueSteps(const Block& block, const Block* before,
                                      const Stimulator& unit, FatigueMemory& memory,
                                      const FatigueOptions& options)
{
    std::vector<FatigueStep> steps;
    for (std::size_t i = 0; i < block.sites.size(); ++i) {
        if (before == nullptr) {
            steps.push_back({NoFatigueRatio::noBlockBefore});
        } else if (const auto same = sameSiteBefore(block, i, *before)) {
            steps.push_back(stepOf(block.sites[i].settings, before->sites[*same].settings, unit,
                                   memory, options));
        } else {
            steps.push_back({NoFatigueRatio::muscleNotBefore});
        }
    }
    return steps;
}

std::vector<double> peakShares(const Settings& settings, const Stimulator& unit,
                               const FatigueOptions& options)
{
    std::vector<double> shares;
    const auto run = settingsForModel(settings, unit);
    if (!run) {
        return shares;
    }
    const auto contractions = predictContractions(*run, unit.rampHabit, options);
    if (!contractions || contractions->empty() || !(contractions->front().peakNewtons > 0.0)) {
        return shares;
    }
    for (const ContractionForce& contraction : *contractions) {
        shares.push_back(contraction.peakNewtons / contractions->front().peakNewtons);
    }
    return shares;
}

std::vector<WeekFatigue> fatigueByWeek(const Course& course, const std::vector<Plan>& plans,
                                       const Site& site, const Stimulator& unit,
                                       FatigueMemory& memory, const FatigueOptions& options)
{
    int lastWeek = 0;
    for (const Plan& plan : plans) {
        lastWeek = std::max(lastWeek, totalWeeks(plan.blocks));
    }
    std::vector<WeekFatigue> weeks;
    std::vector<SiteInForce> comparable;
    std::set<std::pair<Milliseconds, Milliseconds>> different;
    for (CourseWeek week; week.number <= lastWeek; ++week.number) {
        weeks.push_back({week});
        SiteInForce& found = comparable.emplace_back(siteInWeek(course, plans, week, site));
        if (found.site != nullptr &&
            modelComparability(site.settings, unit.rampHabit, found.site->settings,
                               found.unit->rampHabit, options.phaseDurationRecruits)
                .isAllowed()) {
            different.emplace(found.site->settings.offTime, found.site->settings.sessionLength);
        } else {
            found = {};
        }
    }
    // What is not shown is not asked.
    for (std::size_t i = 0; different.size() > 1 && i < weeks.size(); ++i) {
        if (comparable[i].site != nullptr) {
            weeks[i].ratio =
                ask(comparable[i].site->settings, *comparable[i].unit, memory, options).ratio;
        }
    }
    return weeks;
}

} // namespace quadrille
