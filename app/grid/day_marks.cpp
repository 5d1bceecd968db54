// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grid/day_marks.h"

#include "app/grid/grid_geometry.h"

#include <QCoreApplication>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct GridWords {
    Q_DECLARE_TR_FUNCTIONS(GridWords)
};

constexpr int leastWeeks = 4;

/// The nearest of the shares that can be drawn.
DoneShare nearestShare(double share)
{
    return share < 5.0 / 12.0   ? DoneShare::third
           : share < 7.0 / 12.0 ? DoneShare::half
                                : DoneShare::twoThirds;
}

/// By minutes, or by sessions where no length is known.
double doneShareOf(const LivedDay& day)
{
    const DoseCounts& dose = day.dose;
    return dose.prescribed.time.count() > 0
               ? static_cast<double>(dose.delivered.time.count()) /
                     static_cast<double>(dose.prescribed.time.count())
               : static_cast<double>(day.counts.done) / std::max(1, day.counts.prescribed());
}

DayState stateOf(DayStanding standing)
{
    switch (standing) {
    case DayStanding::notPrescribed:
        return DayState::notPrescribed;
    case DayStanding::toCome:
        return DayState::toCome;
    case DayStanding::notKnownYet:
        return DayState::noDiaryYet;
    case DayStanding::done:
        return DayState::done;
    case DayStanding::partly:
        return DayState::partlyDone;
    case DayStanding::missed:
        return DayState::missed;
    case DayStanding::extra:
        return DayState::doneNotPrescribed;
    case DayStanding::paused:
        return DayState::paused;
    }
    return DayState::blank;
}

DayMark markOf(const LivedDay* day)
{
    DayMark mark;
    mark.state = DayState::notPrescribed;
    if (day == nullptr) {
        return mark;
    }
    mark.state = stateOf(day->standing);
    mark.sessionsPrescribed = day->asked ? day->asked->sessions : 0;
    mark.sessionsDone = day->counts.done;
    mark.sessionsExtra = day->counts.extra;
    if (mark.state == DayState::partlyDone) {
        mark.share = nearestShare(doneShareOf(*day));
    }
    mark.skinMark = day->skin >= Skin::thereNextDay;
    mark.note = QString::fromStdString(day->remark);
    return mark;
}

WeekMarks weekOf(const CourseAsLived& lived, CourseWeek week)
{
    WeekMarks marks;
    if (week.number < 1) {
        return marks;
    }
    const Date first = firstDayOf(lived.startDate, week);
    for (int row = 0; row < daysInWeek; ++row) {
        marks[static_cast<std::size_t>(row)] = markOf(lived.find(first + std::chrono::days(row)));
    }
    return marks;
}

/// The block a week shows in its head.
std::optional<std::size_t> headOf(const Course& course, const std::vector<Plan>& plans,
                                  CourseWeek week)
{
    const Date last = firstDayOf(course.startDate, week) + std::chrono::days(daysInWeek - 1);
    const auto inForce = planInForce(plans, last);
    return inForce ? blockOf(plans[*inForce].blocks, week) : std::nullopt;
}

/// The last week that any plan can still reach.
int lastPlannedWeek(const std::vector<Plan>& plans)
{
    int last = 0;
    for (const Plan& plan : plans) {
        last = std::max(last, totalWeeks(plan.blocks));
    }
    return last;
}

int lastWeekOf(const Course& course, const std::vector<Plan>& plans, Date today)
{
    int last = lastPlannedWeek(plans);
    // A plan with fewer weeks may have replaced a longer one.
    while (last > 0 && !headOf(course, plans, {last})) {
        --last;
    }
    const Date reached = course.endDate ? std::min(*course.endDate, today) : today;
    if (const auto week = courseWeekOf(course.startDate, reached)) {
        last = std::max(last, week->number);
    }
    return std::max(last, leastWeeks);
}

bool isWhollyPaused(const WeekMarks& week)
{
    return std::ranges::all_of(week,
                               [](const DayMark& day) {
                                   return day.state == DayState::paused ||
                                          day.state == DayState::doneNotPrescribed;
                               }) &&
           std::ranges::any_of(week,
                               [](const DayMark& day) { return day.state == DayState::paused; });
}

BlockSpan spanOf(int week, std::size_t index, bool isPause)
{
    if (isPause) {
        return {{week}, 1, index, GridWords::tr("Pause"), QStringLiteral("–"), true};
    }
    const QString shortName = QString::number(index + 1);
    return {{week}, 1, index, GridWords::tr("Block %1").arg(shortName), shortName, false};
}

std::vector<BlockSpan> spansOf(const CourseRecords& records, const std::vector<WeekMarks>& weeks)
{
    std::vector<BlockSpan> spans;
    bool continues = false;
    for (int number = 1; number <= static_cast<int>(weeks.size()); ++number) {
        const auto index = headOf(records.course, records.plans, {number});
        if (!index) {
            continues = false;
            continue;
        }
        const bool isPause = isWhollyPaused(weeks[static_cast<std::size_t>(number - 1)]);
        continues = continues && spans.back().index == *index && spans.back().isPause == isPause;
        if (continues) {
            ++spans.back().weeks;
        } else {
            spans.push_back(spanOf(number, *index, isPause));
        }
        continues = true;
    }
    return spans;
}

CourseGrid emptyGrid(const Course& course, Date today, const QuantityText& text)
{
    CourseGrid grid;
    grid.startDate = course.startDate;
    for (int row = 0; row < daysInWeek; ++row) {
        const Weekday day(course.startDate + std::chrono::days(row));
        grid.weekdayNames[static_cast<std::size_t>(row)] = text.shortWeekday(day);
    }
    grid.currentWeek = courseWeekOf(course.startDate, today);
    if (grid.currentWeek) {
        const Date first = firstDayOf(course.startDate, *grid.currentWeek);
        grid.todayRow = static_cast<int>((today - first).count());
    }
    return grid;
}

} // namespace

CourseGrid courseGridOf(const GridSource& source, const QuantityText& text)
{
    const Course& course = source.records.course;
    const CourseAsLived lived = courseAsLived(source.records, source.rules, source.today);
    CourseGrid grid = emptyGrid(course, source.today, text);
    const int last = lastWeekOf(course, source.records.plans, source.today);
    for (int number = 1; number <= last; ++number) {
        grid.weeks.push_back(weekOf(lived, {number}));
    }
    grid.blocks = spansOf(source.records, grid.weeks);
    return grid;
}

CourseGrid courseGridOf(const Course& course, const std::vector<Plan>& plans, Date today,
                        const QuantityText& text)
{
    return courseGridOf({.records = {.course = course, .plans = plans}, .today = today}, text);
}

CourseGrid miniatureOf(const GridSource& source, const QuantityText& text)
{
    const Course& course = source.records.course;
    const CourseAsLived lived = courseAsLived(source.records, source.rules, source.today);
    CourseGrid grid = emptyGrid(course, source.today, text);
    const Date shown = course.endDate ? std::min(*course.endDate, source.today) : source.today;
    const auto current = courseWeekOf(course.startDate, shown);
    const int last = current ? current->number : miniatureWeeks;
    grid.firstWeek = {last - miniatureWeeks + 1};
    for (int number = grid.firstWeek.number; number <= last; ++number) {
        grid.weeks.push_back(weekOf(lived, {number}));
    }
    return grid;
}

CourseGrid miniatureOf(const Course& course, const std::vector<Plan>& plans, Date today,
                       const QuantityText& text)
{
    return miniatureOf({.records = {.course = course, .plans = plans}, .today = today}, text);
}

} // namespace quadrille::app
