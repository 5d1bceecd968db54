// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/chart_link.h"

#include "app/charts/chart_view.h"

namespace quadrille::app
{

ChartLink::ChartLink(QObject* parent)
    : QObject(parent)
{
}

void ChartLink::add(ChartView& chart)
{
    m_charts.push_back(&chart);
    connect(&chart, &ChartView::crosshairMoved, this,
            [this, &chart](const std::optional<double>& place) {
                for (ChartView* other : m_charts) {
                    if (other != &chart) {
                        other->setCrosshair(place);
                    }
                }
                emit moved(place);
            });
}

} // namespace quadrille::app
