// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/course_projection.h"

#include "core/dose.h"
#include "core/session_timing.h"

#include <algorithm>

namespace quadrille
{

namespace
{

/// So many sessions of one block in one week.
struct WeekPart {
    const Block* block = nullptr;
    const Stimulator* stimulator = nullptr;
    std::int64_t sessions = 0;
};

void add(WeekFigures& to, const WeekFigures& more)
{
    to.sessions += more.sessions;
    to.contractionsStarted += more.contractionsStarted;
    to.contractionsCompleted += more.contractionsCompleted;
    to.onTime += more.onTime;
    to.pulses += more.pulses;
    const bool bothKnown = to.charge && more.charge;
    to.charge = bothKnown ? std::optional(TotalCharge(to.charge->shown() + more.charge->shown()))
                          : std::nullopt;
}

ProjectedSite projectSite(const Site& site, const WeekPart& part, FatigueMemory& memory,
                          const FatigueOptions& options)
{
    ProjectedSite projected{site.muscle, site.side};
    const RampHabit habit = part.stimulator->rampHabit;
    const Result<SessionTiming> timing =
        sessionTiming(site.settings, habit, part.stimulator->cycleStart);
    if (!timing) {
        return projected;
    }
    std::optional<ChargePerPhase> charge;
    const auto amplitude = doseAmplitude(site.settings.amplitude);
    const auto area = smallerPadArea(site.pads);
    if (amplitude && area && std::ranges::all_of(site.pads, isPossible)) {
        charge = doseOf(site.settings, *amplitude, *area, *timing).phaseCharge;
    }
    projected.week = weekOf(*timing, part.sessions, charge);
    if (const auto prediction =
            memory.predict(withoutLead(site.settings, *timing), habit, options)) {
        projected.fatigue = prediction->lastToFirst;
    }
    return projected;
}

/// Sites of one list found in another by muscle and side, the first by the first, the second pair
/// on the same muscle by the second, each at most once.
class SameSites
{
public:
    /// Among the first `count` of `sites`.
    SameSites(std::vector<ProjectedSite>& sites, std::size_t count)
        : m_sites(sites)
        , m_isTaken(count, false)
    {
    }
    ProjectedSite* next(const std::string& muscle, Side side)
    {
        for (std::size_t i = 0; i < m_isTaken.size(); ++i) {
            ProjectedSite& site = m_sites[i];
            if (!m_isTaken[i] && site.muscle == muscle && site.side == side) {
                m_isTaken[i] = true;
                return &site;
            }
        }
        return nullptr;
    }

private:
    std::vector<ProjectedSite>& m_sites;
    std::vector<bool> m_isTaken;
};

ProjectedWeek projectWeek(CourseWeek week, const std::vector<WeekPart>& parts,
                          FatigueMemory& memory, const FatigueOptions& options)
{
    ProjectedWeek projected{week, {}};
    for (const WeekPart& part : parts) {
        SameSites earlier(projected.sites, projected.sites.size());
        for (const Site& site : part.block->sites) {
            const ProjectedSite more = projectSite(site, part, memory, options);
            ProjectedSite* before = earlier.next(site.muscle, site.side);
            if (!before) {
                projected.sites.push_back(more);
                continue;
            }
            if (before->week && more.week) {
                add(*before->week, *more.week);
            } else {
                before->week = std::nullopt;
            }
            before->fatigue = more.fatigue;
        }
    }
    return projected;
}

/// The step of each site from the week before.
void addSteps(std::vector<ProjectedWeek>& weeks)
{
    for (std::size_t i = 1; i < weeks.size(); ++i) {
        SameSites earlier(weeks[i - 1].sites, weeks[i - 1].sites.size());
        for (ProjectedSite& site : weeks[i].sites) {
            const ProjectedSite* before = earlier.next(site.muscle, site.side);
            if (before && before->week && site.week && before->week->onTime.count() > 0) {
                site.step =
                    static_cast<double>((site.week->onTime - before->week->onTime).count()) /
                    static_cast<double>(before->week->onTime.count());
            }
        }
    }
}

bool canCount(const Block& block)
{
    return daysPerWeek(block) >= 0 && daysPerWeek(block) <= 7 && block.sessionsPerDay >= 0;
}

/// What each plan asks of one week, the earlier part first.
std::vector<WeekPart> partsOf(const Course& course, const std::vector<Plan>& plans, CourseWeek week)
{
    std::vector<WeekPart> parts;
    std::vector<int> daysInForce;
    const Date first = firstDayOf(course.startDate, week);
    for (int day = 0; day < 7; ++day) {
        const Date date = first + std::chrono::days(day);
        const DayPrescription prescription = prescriptionOn(course, plans, date);
        const auto inForce = planInForce(plans, date);
        if (!inForce || prescription.sessions == 0) {
            continue;
        }
        const Plan& plan = plans[*inForce];
        const Block& block = plan.blocks[*blockOf(plan.blocks, week)];
        if (parts.empty() || parts.back().block != &block) {
            parts.push_back({&block, &plan.stimulator, 0});
            daysInForce.push_back(0);
        }
        const bool counts = !prescription.anyDay || daysInForce.back() < daysPerWeek(block);
        parts.back().sessions += counts ? prescription.sessions : 0;
        ++daysInForce.back();
    }
    return parts;
}

} // namespace

std::vector<ProjectedWeek> projectPlan(const std::vector<Block>& blocks,
                                       const Stimulator& stimulator, FatigueMemory& memory,
                                       const FatigueOptions& options)
{
    std::vector<ProjectedWeek> weeks;
    CourseWeek week;
    for (const Block& block : blocks) {
        const std::int64_t sessions = canCount(block) ? sessionsPerWeek(block) : 0;
        for (int i = 0; i < block.weeks; ++i, ++week.number) {
            weeks.push_back(projectWeek(week, {{&block, &stimulator, sessions}}, memory, options));
        }
    }
    addSteps(weeks);
    return weeks;
}

std::vector<ProjectedWeek> projectCourse(const Course& course, const std::vector<Plan>& plans,
                                         FatigueMemory& memory, const FatigueOptions& options)
{
    int lastWeek = 0;
    for (const Plan& plan : plans) {
        lastWeek = std::max(lastWeek, totalWeeks(plan.blocks));
    }
    if (course.endDate) {
        const auto ended = courseWeekOf(course.startDate, *course.endDate);
        lastWeek = std::min(lastWeek, ended ? ended->number : 0);
    }
    std::vector<ProjectedWeek> weeks;
    for (CourseWeek week; week.number <= lastWeek; ++week.number) {
        weeks.push_back(projectWeek(week, partsOf(course, plans, week), memory, options));
    }
    addSteps(weeks);
    return weeks;
}

} // namespace quadrille
