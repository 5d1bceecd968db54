// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/week_doses.h"

#include <algorithm>

namespace quadrille
{

namespace
{

void raise(std::optional<Amplitude>& highest, std::optional<Amplitude> amplitude)
{
    if (amplitude) {
        highest = std::max(highest.value_or(*amplitude), *amplitude);
    }
}

/// One sitting of each block of each plan.
class Sittings
{
public:
    explicit Sittings(const std::vector<Plan>& plans)
    {
        for (const Plan& plan : plans) {
            std::vector<std::optional<Sitting>>& ofPlan = m_sittings.emplace_back();
            for (const Block& block : plan.blocks) {
                ofPlan.push_back(
                    Sitting::of(block, plan.stimulator.rampHabit, plan.stimulator.cycleStart));
            }
        }
    }
    const std::optional<Sitting>& of(const BlockInForce& block) const
    {
        return m_sittings[block.plan][block.block];
    }

private:
    std::vector<std::vector<std::optional<Sitting>>> m_sittings;
};

void add(std::optional<SittingDose>& to, const SittingDose& more)
{
    if (to) {
        *to += more;
    }
}

/// Adds a day that belongs to the week.
void addDay(WeekDose& week, const LivedDay& day, const CourseRecords& records,
            const Sittings& sittings)
{
    const bool isKnown = day.counts.known() + day.counts.extra > 0;
    if (isKnown && !week.delivered && week.prescribed) {
        week.delivered = SittingDose();
    }
    for (const SessionOfDay& session : day.sessions) {
        if (session.entry) {
            for (const SiteAmplitude& site : records.entries[*session.entry].amplitudes) {
                raise(week.reported, site.amplitude);
            }
        }
    }
    if (!day.asked) {
        return;
    }
    const Block& block = records.plans[day.asked->block.plan].blocks[day.asked->block.block];
    for (const Site& site : block.sites) {
        raise(week.planned, doseAmplitude(site.settings.amplitude));
    }
    const std::optional<Sitting>& sitting = sittings.of(day.asked->block);
    if (!sitting) {
        week.prescribed = std::nullopt;
        week.delivered = std::nullopt;
        return;
    }
    add(week.prescribed, sitting->whole() * day.counts.prescribed());
    for (const SessionOfDay& session : day.sessions) {
        if (session.entry) {
            add(week.delivered, deliveredBy(records.entries[*session.entry], *sitting));
        }
    }
}

} // namespace

std::vector<WeekDose> weekDoses(const CourseRecords& records, const AdherenceRules& rules,
                                Date asOf)
{
    const CourseAsLived lived = courseAsLived(records, rules, asOf);
    const Sittings sittings(records.plans);
    std::vector<WeekDose> weeks;
    for (const LivedDay& day : lived.days) {
        const auto week = courseWeekOf(lived.startDate, day.day);
        if (!week) {
            continue;
        }
        while (static_cast<int>(weeks.size()) < week->number) {
            weeks.push_back({CourseWeek{static_cast<int>(weeks.size()) + 1}});
        }
        addDay(weeks.back(), day, records, sittings);
    }
    return weeks;
}

} // namespace quadrille
