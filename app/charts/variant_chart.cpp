// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/variant_chart.h"

#include "app/charts/contraction_axes.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace quadrille::app
{

namespace
{

struct VariantWords {
    Q_DECLARE_TR_FUNCTIONS(VariantWords)
};

constexpr double percent = 100.0;
constexpr double apart = 9.0; ///< of a hundred: labels closer than this would cover one another
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
    // From the top downwards each makes way only as far as the one above it needs.
    double ceiling = spec.y.most;
    for (auto height = heights.rbegin(); height != heights.rend(); ++height) {
        *height = std::min(*height, ceiling);
        ceiling = *height - apart;
    }
    for (std::size_t i = 0; i < rising.size(); ++i) {
        spec.texts.push_back(
            {{0.0, heights[i]},
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
    double highest = 1.0;
    for (const Curve& curve : forces.curves) {
        highest = std::max(highest, *std::ranges::max_element(curve.shares));
    }
    setContractionAxes(spec, mostContractions(forces), highest, text);
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
