// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/measurement_chart.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <limits>

namespace quadrille::app
{

namespace
{

struct ChartWords {
    Q_DECLARE_TR_FUNCTIONS(ChartWords)
};

constexpr double halfWeek = 0.5;
constexpr double noteRoom = 0.9; ///< weeks left of the first point, for the figure under it
constexpr int mostWeekNumbers = 13;
constexpr double noteShare = 0.14; ///< of the width, a figure under the lines
/// Names closer than this share of the axis would cover one another.
constexpr double nearEachOther = 0.14;

/// Week n lies around n, as in the charts of weeks.
double placeOf(Date day, Date start)
{
    return static_cast<double>((day - start).count()) / 7.0 + halfWeek;
}

void setWeeks(ChartSpec& spec, const MeasurementsToShow& shown)
{
    double first = halfWeek;
    double last = shown.weeks + halfWeek;
    for (const MeasuredLine& line : shown.lines) {
        for (const MeasuredLine::Point& point : line.points) {
            first = std::min(first, placeOf(point.day, shown.courseStart) - noteRoom);
            last = std::max(last, placeOf(point.day, shown.courseStart) + halfWeek);
        }
    }
    spec.x.least = first;
    spec.x.most = last;
    spec.x.title = ChartWords::tr("week of the course");
    const int weeks = static_cast<int>(std::floor(last));
    const int most = std::max(2, static_cast<int>(mostWeekNumbers / shown.textFactor) - 1);
    const int step = shown.textFactor > 1.0 ? weeks / most + 1 : weeks / mostWeekNumbers + 1;
    for (int week = 1; week <= weeks; week += step) {
        spec.x.ticks.push_back(week);
        spec.x.tickNames.append(QString::number(week));
    }
}

void setValues(ChartSpec& spec, const MeasurementsToShow& shown, const QuantityText& text)
{
    double least = 0.0;
    double most = 0.0;
    for (const MeasuredLine& line : shown.lines) {
        for (const MeasuredLine::Point& point : line.points) {
            least = std::min(least, point.value);
            most = std::max(most, point.value);
        }
    }
    spec.y.ticks = roundTicks(shown.scaleEnd.value_or(std::max(most, 1e-3)), 4);
    spec.y.most = shown.scaleEnd.value_or(std::max(spec.y.ticks.back(), most * 1.08));
    if (least < 0.0) {
        spec.y.least = least * 1.1;
        spec.y.ticks.insert(spec.y.ticks.begin(), least);
    }
    for (const double tick : spec.y.ticks) {
        spec.y.tickNames.append(text.shortNumber(tick, 2));
    }
}

void addLines(ChartSpec& spec, const MeasurementsToShow& shown)
{
    for (const MeasuredLine& line : shown.lines) {
        ChartLine drawn;
        drawn.kind = line.compared ? ChartLine::Kind::comparison : ChartLine::Kind::current;
        drawn.marker = line.compared ? ChartLine::Marker::open : ChartLine::Marker::filled;
        for (const MeasuredLine::Point& point : line.points) {
            drawn.points.emplace_back(placeOf(point.day, shown.courseStart), point.value);
        }
        spec.lines.push_back(drawn);
    }
}

/// From the latest back; one that would cover the next is left out.
void addNotes(ChartSpec& spec, const MeasurementsToShow& shown)
{
    const double room = (spec.x.most - spec.x.least) * noteShare * shown.textFactor;
    double next = std::numeric_limits<double>::infinity();
    for (auto note = shown.notes.rbegin(); note != shown.notes.rend(); ++note) {
        const double at = placeOf(note->day, shown.courseStart);
        if (next - at >= room) {
            spec.texts.push_back({{at, spec.y.least}, note->text, ChartText::Place::above, false});
            next = at;
        }
    }
}

void addNames(ChartSpec& spec, const MeasurementsToShow& shown)
{
    const double near = (spec.y.most - spec.y.least) * nearEachOther;
    for (std::size_t i = 0; i < shown.lines.size(); ++i) {
        const MeasuredLine& line = shown.lines[i];
        if (line.points.empty()) {
            continue;
        }
        const MeasuredLine::Point& last = line.points.back();
        ChartText name;
        name.at = {placeOf(last.day, shown.courseStart) + halfWeek * 0.4, last.value};
        name.text = line.name.isEmpty()
                        ? last.text
                        : ChartWords::tr("%1 %2", "side, value").arg(line.name, last.text);
        name.bold = !line.compared;
        name.place = ChartText::Place::right;
        for (std::size_t other = 0; other < shown.lines.size(); ++other) {
            if (other == i || shown.lines[other].points.empty()) {
                continue;
            }
            const double distance = last.value - shown.lines[other].points.back().value;
            const bool higher = distance > 0.0 || (distance == 0.0 && i < other);
            if (std::abs(distance) < near) {
                name.at.ry() += (higher ? 1.0 : -1.0) * (near - std::abs(distance)) / 2.0;
            }
        }
        spec.texts.push_back(name);
    }
    addNotes(spec, shown);
}

QString spokenOf(const MeasurementsToShow& shown, const QuantityText& text)
{
    QStringList lines;
    for (const MeasuredLine& line : shown.lines) {
        QStringList points;
        for (const MeasuredLine::Point& point : line.points) {
            points.append(ChartWords::tr("%1 on %2", "value, day")
                              .arg(point.text, text.dayAndMonth(point.day)));
        }
        const QString all = points.join(QStringLiteral(", "));
        lines.append(line.name.isEmpty()
                         ? all
                         : ChartWords::tr("%1: %2", "side, values").arg(line.name, all));
    }
    return ChartWords::tr("%1. %2.", "kind, values")
        .arg(shown.name, lines.join(QStringLiteral("; ")));
}

} // namespace

ChartSpec measurementChart(const MeasurementsToShow& shown, const QuantityText& text)
{
    ChartSpec spec;
    setWeeks(spec, shown);
    setValues(spec, shown, text);
    addLines(spec, shown);
    addNames(spec, shown);
    spec.spoken = spokenOf(shown, text);
    return spec;
}

} // namespace quadrille::app
