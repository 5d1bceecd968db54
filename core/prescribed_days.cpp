// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/prescribed_days.h"

#include <algorithm>
#include <optional>

namespace quadrille
{

namespace
{

constexpr int daysInWeek = 7;

std::optional<PrescribedDay> prescribedDay(const Course& course, const std::vector<Plan>& plans,
                                           Date date)
{
    const auto week = courseWeekOf(course.startDate, date);
    const auto plan = planInForce(plans, date);
    const auto block = week && plan ? blockOf(plans[*plan].blocks, *week) : std::nullopt;
    if (!block) {
        return std::nullopt;
    }
    const Block& inForce = plans[*plan].blocks[*block];
    PrescribedDay day{.day = date, .week = *week, .block = {*plan, *block}};
    const auto* weekdays = std::get_if<WeekdaySet>(&inForce.schedule);
    day.anyDay = weekdays == nullptr;
    day.sessions =
        day.anyDay || weekdays->contains(Weekday(date)) ? std::max(0, inForce.sessionsPerDay) : 0;
    return day;
}

} // namespace

std::vector<PrescribedDay> prescribedDays(const Course& course, const std::vector<Plan>& plans,
                                          const std::vector<Pause>& pauses)
{
    int weeks = 0;
    for (const Plan& plan : plans) {
        weeks = std::max(weeks, totalWeeks(plan.blocks));
    }
    std::vector<PrescribedDay> days;
    days.reserve(static_cast<std::size_t>(std::max(0, weeks)) * daysInWeek);
    const Date end = course.startDate + std::chrono::days(weeks * daysInWeek);
    for (Date date = course.startDate; date < end && isRunning(course, date);
         date += std::chrono::days(1)) {
        if (auto day = prescribedDay(course, plans, date)) {
            day->isPaused = std::ranges::any_of(
                pauses, [date](const Pause& pause) { return contains(pause, date); });
            day->sessions = day->isPaused ? 0 : day->sessions;
            days.push_back(*day);
        }
    }
    return days;
}

int daysOfPartWeek(DaysPerWeek perWeek, int daysOfPart)
{
    return (2 * perWeek.days * daysOfPart + daysInWeek) / (2 * daysInWeek);
}

} // namespace quadrille
