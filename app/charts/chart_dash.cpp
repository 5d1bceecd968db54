// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/chart_dash.h"

#include "app/look/tokens.h"

namespace quadrille::app
{

namespace
{

constexpr double dot = 1.0; ///< as long as the line is wide

} // namespace

QList<qreal> dashPattern(ChartLine::Dash dash)
{
    if (dash == ChartLine::Dash::dots) {
        return {dot, stroke::dashGap};
    }
    if (dash == ChartLine::Dash::dashDot) {
        return {2.0 * stroke::dash, stroke::dashGap, dot, stroke::dashGap};
    }
    return {stroke::dash, stroke::dashGap};
}

} // namespace quadrille::app
