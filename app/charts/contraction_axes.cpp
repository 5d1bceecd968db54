// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/contraction_axes.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace quadrille::app
{

namespace
{

struct AxisWords {
    Q_DECLARE_TR_FUNCTIONS(AxisWords)
};

constexpr double percent = 100.0;
constexpr double headroom = 1.04;
constexpr int mostNumbers = 5;

} // namespace

void setContractionAxes(ChartSpec& spec, std::size_t contractions, double highest,
                        const QuantityText& text)
{
    const auto last = static_cast<double>(contractions);
    spec.x.least = 0.5;
    spec.x.most = last + 0.5;
    spec.x.title = AxisWords::tr("contraction in the session");
    spec.x.hasGrid = false;
    for (const double tick : roundTicks(last, mostNumbers)) {
        // A session begins with contraction 1, not 0.
        const double contraction = std::max(1.0, tick);
        const bool isNew = spec.x.ticks.empty() || contraction > spec.x.ticks.back();
        if (isNew && contraction <= last) {
            spec.x.ticks.push_back(contraction);
            spec.x.tickNames.append(text.count(std::llround(contraction)));
        }
    }
    spec.y.ticks = {0.0, 25.0, 50.0, 75.0, 100.0};
    for (const double tick : spec.y.ticks) {
        spec.y.tickNames.append(text.shortNumber(tick, 0));
    }
    spec.y.title = AxisWords::tr("% of the first");
    spec.y.most = std::max(1.0, highest) * percent * headroom;
}

} // namespace quadrille::app
