// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/chart_spec.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace quadrille::app
{

namespace
{

struct ReadoutWords {
    Q_DECLARE_TR_FUNCTIONS(ReadoutWords)
};

} // namespace

std::vector<double> roundTicks(double most, int wanted)
{
    if (!(most > 0) || wanted < 1) {
        return {0.0, 1.0};
    }
    const double rough = most / wanted;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    double step = 10.0 * power;
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (factor * power >= rough) {
            step = factor * power;
            break;
        }
    }
    std::vector<double> ticks;
    const auto count = static_cast<int>(std::ceil(most / step - 1e-9));
    for (int i = 0; i <= count; ++i) {
        ticks.push_back(i * step);
    }
    return ticks;
}

std::optional<std::size_t> rowNearest(const ChartTable& table, double place)
{
    const auto nearest =
        std::ranges::min_element(table.rows, {}, [place](const ChartTable::Row& row) {
            return std::abs(row.place - place);
        });
    return nearest != table.rows.end()
               ? std::optional(static_cast<std::size_t>(nearest - table.rows.begin()))
               : std::nullopt;
}

QString rowText(const ChartTable& table, std::size_t row)
{
    return ReadoutWords::tr("%1 %2: %3", "name of the places, place, values")
        .arg(table.columns.value(0), table.rows[row].cells.value(0), table.rows[row].readout);
}

} // namespace quadrille::app
