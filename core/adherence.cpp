// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/adherence.h"

#include <algorithm>

namespace quadrille
{

namespace
{

using std::chrono::days;

constexpr std::size_t weeksOfTrend = 4;

/// The judged days of an interval on which a block is in force.
template <class Take>
void forPlannedDays(const CourseAsLived& course, const DateInterval& interval, Take take)
{
    auto day = std::ranges::lower_bound(course.days, interval.from, {}, &LivedDay::day);
    for (; day != course.days.end() && day->day <= interval.to; ++day) {
        if (day->asked) {
            take(*day);
        }
    }
}

std::vector<BlockAdherence> blocksBetween(const CourseAsLived& course,
                                          const std::vector<Plan>& plans,
                                          const DateInterval& interval)
{
    struct Stretch {
        BlockInForce block;
        DateInterval days;
    };
    std::vector<Stretch> stretches;
    forPlannedDays(course, interval, [&](const LivedDay& day) {
        if (stretches.empty() || stretches.back().block != day.asked->block) {
            stretches.push_back({day.asked->block, {day.day, day.day}});
        }
        stretches.back().days.to = day.day;
    });
    std::vector<BlockAdherence> blocks;
    blocks.reserve(stretches.size());
    for (const Stretch& stretch : stretches) {
        blocks.push_back({plans[stretch.block.plan].number, stretch.block.block,
                          figuresBetween(course, stretch.days.from, stretch.days.to)});
    }
    return blocks;
}

std::optional<Share> weeksReaching(const std::vector<WeekAdherence>& weeks)
{
    const auto known = std::ranges::count_if(weeks, &WeekAdherence::isFullyKnown);
    const auto reaching = std::ranges::count_if(
        weeks, [](const WeekAdherence& week) { return week.reachesThreshold == true; });
    return known > 0 ? std::optional(Share{reaching, known}) : std::nullopt;
}

std::optional<Date> lastFollowUpBefore(const std::vector<FollowUp>& followUps, Date asOf)
{
    std::optional<Date> last;
    for (const FollowUp& followUp : followUps) {
        if (!followUp.withdrawn && followUp.heldOn < asOf && (!last || *last < followUp.heldOn)) {
            last = followUp.heldOn;
        }
    }
    return last;
}

/// The sessions of two weeks together; both have some prescribed.
Share together(const WeekAdherence& a, const WeekAdherence& b)
{
    return {a.figures.session->part + b.figures.session->part,
            a.figures.session->whole + b.figures.session->whole};
}

} // namespace

DateInterval wholeCourse(const Course& course, Date asOf)
{
    return {course.startDate, std::max(course.startDate, asOf)};
}

std::vector<WeekAdherence> weeksBetween(const CourseAsLived& course, const AdherenceRules& rules,
                                        const DateInterval& interval)
{
    std::vector<WeekAdherence> weeks;
    forPlannedDays(course, interval, [&](const LivedDay& day) {
        const CourseWeek number = day.asked->week;
        if (!weeks.empty() && weeks.back().week == number) {
            return;
        }
        const Date first = firstDayOf(course.startDate, number);
        const Date last = first + days(6);
        WeekAdherence& week = weeks.emplace_back();
        week.week = number;
        week.figures =
            figuresBetween(course, std::max(first, interval.from), std::min(last, interval.to));
        const SessionCounts& sessions = week.figures.sessions;
        week.isFullyKnown = first >= interval.from && last <= interval.to && sessions.known() > 0 &&
                            sessions.known() == sessions.prescribed();
        if (week.isFullyKnown) {
            week.reachesThreshold = week.figures.session->reaches(rules.weekPercent);
        }
    });
    return weeks;
}

std::optional<AdherenceTrend> trendOf(const std::vector<WeekAdherence>& weeks)
{
    std::vector<const WeekAdherence*> latest;
    for (auto week = weeks.rbegin(); week != weeks.rend() && latest.size() < weeksOfTrend; ++week) {
        if (week->isFullyKnown) {
            latest.push_back(&*week);
        }
    }
    if (latest.size() < weeksOfTrend) {
        return std::nullopt;
    }
    return AdherenceTrend{latest[0]->week, together(*latest[0], *latest[1]),
                          together(*latest[2], *latest[3])};
}

Adherence adherenceOf(const CourseRecords& records, const AdherenceRules& rules,
                      const DateInterval& interval, Date asOf)
{
    const CourseAsLived lived = courseAsLived(records, rules, asOf);
    Adherence adherence;
    adherence.asOf = asOf;
    adherence.knownThrough = lived.knownThrough;
    adherence.interval = figuresBetween(lived, interval.from, interval.to);
    adherence.weeks = weeksBetween(lived, rules, interval);
    adherence.blocks = blocksBetween(lived, records.plans, interval);
    adherence.weeksReaching = weeksReaching(adherence.weeks);
    adherence.trend = trendOf(adherence.weeks);
    adherence.last7Days = figuresBetween(lived, asOf - days(6), asOf);
    adherence.last14Days = figuresBetween(lived, asOf - days(13), asOf);
    if (lived.knownThrough) {
        adherence.last14KnownDays =
            figuresBetween(lived, *lived.knownThrough - days(13), *lived.knownThrough);
    }
    adherence.lastFollowUp = lastFollowUpBefore(records.followUps, asOf);
    adherence.sinceLastFollowUp =
        figuresBetween(lived, adherence.lastFollowUp.value_or(records.course.startDate), asOf);
    return adherence;
}

} // namespace quadrille
