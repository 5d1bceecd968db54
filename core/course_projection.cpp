// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/course_projection.h"

#include "core/body_region.h"
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

/// What the model is asked with; no memory: it is not asked.
struct ModelAsked {
    FatigueMemory* memory = nullptr;
    FatigueOptions options = {};
};

ProjectedSite projectSite(const Site& site, const WeekPart& part, const ModelAsked& model)
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
    if (model.memory == nullptr) {
        return projected;
    }
    if (const auto prediction =
            model.memory->predict(withoutLead(site.settings, *timing), habit, model.options)) {
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
            if (!m_isTaken[i] && isSameMuscle(site.muscle, muscle) && site.side == side) {
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

void addSitting(ProjectedWeek& week, const WeekPart& part)
{
    week.sessions += part.sessions;
    const auto sitting =
        Sitting::of(*part.block, part.stimulator->rampHabit, part.stimulator->cycleStart);
    if (sitting && week.dose) {
        *week.dose += sitting->whole() * static_cast<int>(part.sessions);
    } else {
        week.dose = std::nullopt;
    }
}

ProjectedWeek projectWeek(CourseWeek week, const std::vector<WeekPart>& parts,
                          const ModelAsked& model)
{
    ProjectedWeek projected{week, {}};
    for (const WeekPart& part : parts) {
        addSitting(projected, part);
        SameSites earlier(projected.sites, projected.sites.size());
        for (const Site& site : part.block->sites) {
            const ProjectedSite more = projectSite(site, part, model);
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

std::vector<ProjectedWeek> project(const std::vector<Block>& blocks, const Stimulator& stimulator,
                                   const ModelAsked& model)
{
    std::vector<ProjectedWeek> weeks;
    CourseWeek week;
    for (const Block& block : blocks) {
        const std::int64_t sessions = canCount(block) ? sessionsPerWeek(block) : 0;
        for (int i = 0; i < block.weeks; ++i, ++week.number) {
            weeks.push_back(projectWeek(week, {{&block, &stimulator, sessions}}, model));
        }
    }
    addSteps(weeks);
    return weeks;
}

/// Charge of one muscle over the weeks.
struct MuscleCharge {
    std::string muscle;
    Side side = Side::right;
    double total = 0.0; ///< as shown
    bool isKnown = true;
};

/// Sites of one week on the same muscle stand beside one another: the higher counts.
void addCharges(std::vector<MuscleCharge>& charges, const ProjectedWeek& week)
{
    std::vector<double> ofWeek(charges.size(), 0.0);
    for (const ProjectedSite& site : week.sites) {
        auto found = std::ranges::find_if(charges, [&](const MuscleCharge& charge) {
            return charge.muscle == site.muscle && charge.side == site.side;
        });
        if (found == charges.end()) {
            found = charges.insert(found, {site.muscle, site.side});
            ofWeek.push_back(0.0);
        }
        const bool isKnown = site.week && site.week->charge;
        found->isKnown = found->isKnown && isKnown;
        double& highest = ofWeek[static_cast<std::size_t>(found - charges.begin())];
        highest = std::max(highest, isKnown ? site.week->charge->shown() : 0.0);
    }
    for (std::size_t i = 0; i < charges.size(); ++i) {
        charges[i].total += ofWeek[i];
    }
}

} // namespace

std::vector<ProjectedWeek> projectPlan(const std::vector<Block>& blocks,
                                       const Stimulator& stimulator, FatigueMemory& memory,
                                       const FatigueOptions& options)
{
    return project(blocks, stimulator, {&memory, options});
}

std::vector<ProjectedWeek> projectWithoutModel(const std::vector<Block>& blocks,
                                               const Stimulator& stimulator)
{
    return project(blocks, stimulator, {});
}

PlanTotals totalsOf(const std::vector<ProjectedWeek>& weeks)
{
    PlanTotals totals;
    std::vector<MuscleCharge> charges;
    for (const ProjectedWeek& week : weeks) {
        totals.sessions += week.sessions;
        if (totals.dose && week.dose) {
            *totals.dose += *week.dose;
        } else {
            totals.dose = std::nullopt;
        }
        addCharges(charges, week);
    }
    const bool known = !charges.empty() && std::ranges::all_of(charges, &MuscleCharge::isKnown);
    if (known) {
        totals.charge =
            TotalCharge(std::ranges::max_element(charges, {}, &MuscleCharge::total)->total);
    }
    return totals;
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
        weeks.push_back(projectWeek(week, partsOf(course, plans, week), {&memory, options}));
    }
    addSteps(weeks);
    return weeks;
}

} // namespace quadrille
