// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan.h"

#include <algorithm>

namespace quadrille
{

int daysPerWeek(const Block& block)
{
    if (const auto* weekdays = std::get_if<WeekdaySet>(&block.schedule)) {
        return weekdays->size();
    }
    return std::get<DaysPerWeek>(block.schedule).days;
}

int sessionsPerWeek(const Block& block)
{
    return daysPerWeek(block) * block.sessionsPerDay;
}

Draft draftFrom(const Plan& plan)
{
    Draft draft;
    draft.course = plan.course;
    draft.stimulator = plan.stimulator.id;
    draft.blocks = plan.blocks;
    return draft;
}

int totalWeeks(const std::vector<Block>& blocks)
{
    int weeks = 0;
    for (const Block& block : blocks) {
        weeks += block.weeks;
    }
    return weeks;
}

CourseWeek firstWeekOf(const std::vector<Block>& blocks, std::size_t index)
{
    CourseWeek week;
    for (std::size_t i = 0; i < index; ++i) {
        week.number += blocks[i].weeks;
    }
    return week;
}

std::optional<std::size_t> blockOf(const std::vector<Block>& blocks, CourseWeek week)
{
    int lastWeek = 0;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        lastWeek += blocks[i].weeks;
        if (week.number >= 1 && week.number <= lastWeek) {
            return i;
        }
    }
    return std::nullopt;
}

std::optional<std::size_t> planInForce(const std::vector<Plan>& plans, Date day)
{
    std::optional<std::size_t> inForce;
    for (std::size_t i = 0; i < plans.size(); ++i) {
        const bool started = plans[i].fromDate <= day;
        if (started && (!inForce || plans[i].number > plans[*inForce].number)) {
            inForce = i;
        }
    }
    return inForce;
}

std::optional<TreatedSide> treatedSideOf(const Course& course, const std::vector<Plan>& plans)
{
    if (course.treatedSide || plans.empty()) {
        return course.treatedSide;
    }
    const Plan& newest = *std::ranges::max_element(plans, {}, &Plan::number);
    bool left = false;
    bool right = false;
    for (const Block& block : newest.blocks) {
        for (const Site& site : block.sites) {
            left = left || site.side == Side::left;
            right = right || site.side == Side::right;
        }
    }
    if (left && right) {
        return TreatedSide::both;
    }
    if (!left && !right) {
        return std::nullopt;
    }
    return left ? TreatedSide::left : TreatedSide::right;
}

DayPrescription prescriptionOn(const Course& course, const std::vector<Plan>& plans, Date day)
{
    const auto week = courseWeekOf(course.startDate, day);
    const auto inForce = planInForce(plans, day);
    if (!week || !inForce || !isRunning(course, day)) {
        return {};
    }
    const std::vector<Block>& blocks = plans[*inForce].blocks;
    const auto index = blockOf(blocks, *week);
    if (!index) {
        return {};
    }
    const Block& block = blocks[*index];
    if (const auto* weekdays = std::get_if<WeekdaySet>(&block.schedule)) {
        return {weekdays->contains(Weekday(day)) ? block.sessionsPerDay : 0, false};
    }
    return {block.sessionsPerDay, true};
}

} // namespace quadrille
