// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/variant_chart.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>

namespace quadrille::app
{

namespace
{

struct VariantWords {
    Q_DECLARE_TR_FUNCTIONS(VariantWords)
};

constexpr double percent = 100.0;
constexpr double apart = 9.0; ///< of a hundred: labels closer than this would cover one another
constexpr double headroom = 1.04;
constexpr int mostNumbers = 5;
constexpr int ratioDecimals = 2;
constexpr std::array dashes{ChartLine::Dash::even, ChartLine::Dash::dots, ChartLine::Dash::dashDot};

using Curve = VariantForces::Curve;

std::size_t mostContractions(const VariantForces& forces)
{
    std::size_t count = 0;
    for (const Curve& curve : forces.curves) {
        count = std::max(count, curve.shares.size());
    }
    return count;
}

void setAxes(ChartSpec& spec, const VariantForces& forces, const QuantityText& text)
{
    const std::size_t count = mostContractions(forces);
    spec.x.least = 0.5;
    spec.x.most = static_cast<double>(count) + 0.5;
    spec.x.title = VariantWords::tr("contraction in the session");
    spec.x.hasGrid = false;
    for (const double tick : roundTicks(static_cast<double>(count), mostNumbers)) {
        const double contraction = std::max(1.0, tick); // the first one is 1, not 0
        const bool isNew = spec.x.ticks.empty() || contraction > spec.x.ticks.back();
        if (isNew && contraction <= static_cast<double>(count)) {
            spec.x.ticks.push_back(contraction);
            spec.x.tickNames.append(text.count(std::llround(contraction)));
        }
    }
    spec.y.ticks = {0.0, 25.0, 50.0, 75.0, 100.0};
    for (const double tick : spec.y.ticks) {
        spec.y.tickNames.append(text.shortNumber(tick, 0));
    }
    spec.y.title = VariantWords::tr("% of the first");
    double highest = 1.0;
    for (const Curve& curve : forces.curves) {
        highest = std::max(highest, *std::ranges::max_element(curve.shares));
    }
    spec.y.most = highest * percent * headroom;
}

void addLine(ChartSpec& spec, const Curve& curve)
{
    ChartLine line;
    for (std::size_t i = 0; i < curve.shares.size(); ++i) {
        line.points.emplace_back(static_cast<double>(i) + 1.0, curve.shares[i] * percent);
    }
    if (curve.stroke > 0) {
        line.kind = ChartLine::Kind::comparison;
        line.dash = dashes[(curve.stroke - 1) % dashes.size()];
    }
    // A session of one contraction is a point.
    line.marker = curve.shares.size() > 1 ? ChartLine::Marker::none
                  : curve.stroke > 0      ? ChartLine::Marker::open
                                          : ChartLine::Marker::filled;
    spec.lines.push_back(std::move(line));
}

/// Names and ratios at the right end, from below upwards, each at least `apart` from the next.
void addLabels(ChartSpec& spec, const VariantForces& forces, const QuantityText& text)
{
    std::vector<const Curve*> rising;
    for (const Curve& curve : forces.curves) {
        rising.push_back(&curve);
    }
    std::ranges::sort(rising, {}, [](const Curve* curve) { return curve->shares.back(); });
    std::vector<double> heights;
    for (const Curve* curve : rising) {
        const double own = curve->shares.back() * percent;
        heights.push_back(heights.empty() ? own : std::max(own, heights.back() + apart));
    }
    const double above = std::max(0.0, heights.back() - spec.y.most);
    for (std::size_t i = 0; i < rising.size(); ++i) {
        spec.texts.push_back(
            {{0.0, heights[i] - above},
             VariantWords::tr("%1 %2", "block or variant, ratio")
                 .arg(rising[i]->name, text.number(rising[i]->shares.back(), ratioDecimals)),
             ChartText::Place::edge,
             rising[i]->stroke == 0});
    }
    // A curve that ends before the axis carries its name where it ends, too.
    const std::size_t most = mostContractions(forces);
    for (const Curve& curve : forces.curves) {
        if (curve.shares.size() < most) {
            spec.texts.push_back(
                {{static_cast<double>(curve.shares.size()), curve.shares.back() * percent},
                 curve.name,
                 ChartText::Place::below,
                 false});
        }
    }
}

void addTable(ChartSpec& spec, const VariantForces& forces, const QuantityText& text)
{
    spec.table.columns = {VariantWords::tr("Contraction")};
    for (const Curve& curve : forces.curves) {
        spec.table.columns.append(VariantWords::tr("%1, %2", "block or variant, unit")
                                      .arg(curve.name, VariantWords::tr("% of the first")));
    }
    const std::size_t count = mostContractions(forces);
    for (std::size_t i = 0; i < count; ++i) {
        ChartTable::Row row{
            static_cast<double>(i) + 1.0, {text.count(static_cast<std::int64_t>(i) + 1)}, {}};
        QStringList readouts;
        for (const Curve& curve : forces.curves) {
            const bool has = i < curve.shares.size();
            row.cells.append(has ? text.number(curve.shares[i] * percent, 1) : QStringLiteral("—"));
            if (has) {
                readouts.append(VariantWords::tr("%1 %2", "block or variant, value")
                                    .arg(curve.name, text.percent(curve.shares[i])));
            }
        }
        row.readout = readouts.join(QStringLiteral(", "));
        spec.table.rows.push_back(row);
    }
}

} // namespace

ChartSpec variantChart(const VariantForces& forces, const QuantityText& text)
{
    ChartSpec spec;
    if (forces.curves.empty()) {
        return spec;
    }
    setAxes(spec, forces, text);
    QStringList ends;
    for (const Curve& curve : forces.curves) {
        addLine(spec, curve);
        ends.append(VariantWords::tr("%1: the last of %2 contractions reaches %3",
                                     "block or variant, count, share")
                        .arg(curve.name)
                        .arg(curve.shares.size())
                        .arg(text.percent(curve.shares.back())));
    }
    addLabels(spec, forces, text);
    addTable(spec, forces, text);
    spec.title = forces.name;
    spec.note = forces.note;
    spec.spoken = VariantWords::tr("%1, %2. %3.", "name, mark of the model, ends of the curves")
                      .arg(forces.name, forces.note, ends.join(QStringLiteral("; ")));
    return spec;
}

} // namespace quadrille::app
