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

DayMark markOf(const Course& course, const std::vector<Plan>& plans, Date day, Date today)
{
    const DayPrescription asked = prescriptionOn(course, plans, day);
    DayMark mark;
    mark.sessionsPrescribed = asked.sessions;
    mark.state = asked.sessions == 0 ? DayState::notPrescribed
                 : day < today       ? DayState::noDiaryYet
                                     : DayState::toCome;
    return mark;
}

WeekMarks weekOf(const Course& course, const std::vector<Plan>& plans, CourseWeek week, Date today)
{
    WeekMarks marks;
    if (week.number < 1) {
        return marks;
    }
    const Date first = firstDayOf(course.startDate, week);
    for (int row = 0; row < daysInWeek; ++row) {
        marks[static_cast<std::size_t>(row)] =
            markOf(course, plans, first + std::chrono::days(row), today);
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

std::vector<BlockSpan> spansOf(const Course& course, const std::vector<Plan>& plans, int lastWeek)
{
    std::vector<BlockSpan> spans;
    std::optional<std::size_t> before;
    for (int number = 1; number <= lastWeek; ++number) {
        const auto index = headOf(course, plans, {number});
        if (index && index == before) {
            ++spans.back().weeks;
        } else if (index) {
            const QString shortName = QString::number(*index + 1);
            const QString name = GridWords::tr("Block %1").arg(shortName);
            spans.push_back({{number}, 1, *index, name, shortName});
        }
        before = index;
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

CourseGrid courseGridOf(const Course& course, const std::vector<Plan>& plans, Date today,
                        const QuantityText& text)
{
    CourseGrid grid = emptyGrid(course, today, text);
    const int last = lastWeekOf(course, plans, today);
    grid.blocks = spansOf(course, plans, last);
    for (int number = 1; number <= last; ++number) {
        grid.weeks.push_back(weekOf(course, plans, {number}, today));
    }
    return grid;
}

CourseGrid miniatureOf(const Course& course, const std::vector<Plan>& plans, Date today,
                       const QuantityText& text)
{
    CourseGrid grid = emptyGrid(course, today, text);
    const Date shown = course.endDate ? std::min(*course.endDate, today) : today;
    const auto current = courseWeekOf(course.startDate, shown);
    const int last = current ? current->number : miniatureWeeks;
    grid.firstWeek = {last - miniatureWeeks + 1};
    for (int number = grid.firstWeek.number; number <= last; ++number) {
        grid.weeks.push_back(weekOf(course, plans, {number}, today));
    }
    return grid;
}

} // namespace quadrille::app
