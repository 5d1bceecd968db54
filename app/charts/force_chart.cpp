// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/force_chart.h"

#include "app/charts/contraction_axes.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace quadrille::app
{

namespace
{

struct ForceWords {
    Q_DECLARE_TR_FUNCTIONS(ForceWords)
};

constexpr double percent = 100.0;
constexpr double apart = 11.0; ///< of a hundred: labels closer than this would cover one another
constexpr int ratioDecimals = 2;

double highest(const std::vector<double>& shares)
{
    return shares.empty() ? 0.0 : *std::ranges::max_element(shares);
}

/// The ratios of peak force at the right end, each at the height of its last contraction.
void addRatios(ChartSpec& spec, const ForcesToShow& forces, const QuantityText& text)
{
    double now = forces.shares.back() * percent;
    const QString ratio = text.number(forces.shares.back(), ratioDecimals);
    if (!forces.before.empty()) {
        double before = forces.before.back() * percent;
        const double distance = before - now;
        if (std::abs(distance) < apart) {
            const double push = (apart - std::abs(distance)) / 2.0;
            const double up = distance >= 0.0 ? 1.0 : -1.0;
            before += up * push;
            now -= up * push;
        }
        spec.texts.push_back(
            {{0.0, before},
             ForceWords::tr("%1 %2", "ratio, block")
                 .arg(text.number(forces.before.back(), ratioDecimals), forces.nameBefore),
             ChartText::Place::edge,
             false});
    }
    spec.texts.push_back({{0.0, now}, ratio, ChartText::Place::edge, true});
}

void addTable(ChartSpec& spec, const ForcesToShow& forces, const QuantityText& text)
{
    spec.table.columns = {ForceWords::tr("Contraction"),
                          ForceWords::tr("%1, %2", "block, unit")
                              .arg(forces.nameNow, ForceWords::tr("% of the first"))};
    if (!forces.before.empty()) {
        spec.table.columns.append(ForceWords::tr("%1, %2", "block, unit")
                                      .arg(forces.nameBefore, ForceWords::tr("% of the first")));
    }
    const std::size_t count = std::max(forces.shares.size(), forces.before.size());
    for (std::size_t i = 0; i < count; ++i) {
        const auto cell = [&](const std::vector<double>& shares) {
            return i < shares.size() ? text.number(shares[i] * percent, 1) : QStringLiteral("—");
        };
        const auto part = [&](const std::vector<double>& shares) {
            return i < shares.size() ? text.percent(shares[i]) : QStringLiteral("—");
        };
        ChartTable::Row row{static_cast<double>(i) + 1.0,
                            {text.count(static_cast<std::int64_t>(i) + 1), cell(forces.shares)},
                            part(forces.shares)};
        if (!forces.before.empty()) {
            row.cells.append(cell(forces.before));
            row.readout = ForceWords::tr("%1, %2 %3", "value, name of the block before, its value")
                              .arg(row.readout, forces.nameBefore, part(forces.before));
        }
        spec.table.rows.push_back(row);
    }
}

} // namespace

ChartSpec forceChart(const ForcesToShow& forces, const QuantityText& text)
{
    ChartSpec spec;
    if (forces.shares.empty()) {
        return spec;
    }
    setContractionAxes(spec, std::max(forces.shares.size(), forces.before.size()),
                       std::max(highest(forces.shares), highest(forces.before)), text);
    ChartBars bars{.heights = {}, .filled = true, .limits = {}};
    for (const double share : forces.shares) {
        bars.heights.emplace_back(share * percent);
    }
    spec.bars.push_back(std::move(bars));
    if (!forces.before.empty()) {
        ChartLine line;
        line.kind = ChartLine::Kind::comparison;
        for (std::size_t i = 0; i < forces.before.size(); ++i) {
            line.points.emplace_back(static_cast<double>(i) + 1.0, forces.before[i] * percent);
        }
        spec.lines.push_back(line);
    }
    addRatios(spec, forces, text);
    addTable(spec, forces, text);
    spec.title = forces.name;
    spec.note = forces.note;
    const QString last = text.percent(forces.shares.back());
    spec.spoken = forces.before.empty()
                      ? ForceWords::tr("%1, %2: the last of %3 contractions reaches %4.")
                            .arg(forces.name, forces.note)
                            .arg(forces.shares.size())
                            .arg(last)
                      : ForceWords::tr("%1, %2: the last of %3 contractions reaches %4; %5: %6.")
                            .arg(forces.name, forces.note)
                            .arg(forces.shares.size())
                            .arg(last, forces.nameBefore, text.percent(forces.before.back()));
    return spec;
}

} // namespace quadrille::app
