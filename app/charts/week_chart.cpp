// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/week_chart.h"

#include <QCoreApplication>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct WeekWords {
    Q_DECLARE_TR_FUNCTIONS(WeekWords)
};

} // namespace

ChartSpec weekChart(const WeeksToShow& weeks, const QuantityText& text)
{
    ChartSpec spec;
    ChartBars bars;
    double most = 0.0;
    QStringList spoken;
    std::optional<double> last;
    for (int week = weeks.firstShown; week <= weeks.lastShown; ++week) {
        const auto index = static_cast<std::size_t>(week - 1);
        const auto planned = index < weeks.planned.size() ? weeks.planned[index] : std::nullopt;
        const double height = planned.value_or(0.0);
        bars.heights.push_back(height);
        most = std::max(most, height);
        if (planned && planned != last) {
            const double at = week - weeks.firstShown + 1;
            spec.texts.push_back(
                {{at, height}, text.shortNumber(height, 0), ChartText::Place::above, false});
            spoken.append(
                WeekWords::tr("from week %1: %2").arg(week).arg(text.shortNumber(height, 0)));
        }
        last = planned;
    }
    spec.bars.push_back(std::move(bars));
    spec.x.least = 0.5;
    spec.x.most = weeks.lastShown - weeks.firstShown + 1.5;
    spec.x.hasGrid = false;
    spec.y.ticks = roundTicks(std::max(most, 1.0), 3);
    spec.y.most = std::max(spec.y.ticks.back(), most * 1.15);
    for (const double tick : spec.y.ticks) {
        spec.y.tickNames.append(text.shortNumber(tick, 1));
    }
    for (const int week : weeks.firstWeeks) {
        if (week > weeks.firstShown && week <= weeks.lastShown) {
            spec.dividers.push_back(week - weeks.firstShown + 0.5);
        }
    }
    spec.spoken =
        WeekWords::tr("%1, planned: %2.").arg(weeks.name, spoken.join(QStringLiteral(", ")));
    return spec;
}

} // namespace quadrille::app
