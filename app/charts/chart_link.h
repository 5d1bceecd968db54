// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>

#include <optional>
#include <vector>

namespace quadrille::app
{

class ChartView;

/// Charts on the same axis share one crosshair: moved in one it moves in all.
class ChartLink : public QObject
{
    Q_OBJECT

public:
    explicit ChartLink(QObject* parent);

    /// `chart` outlives this or is a child of the same parent.
    void add(ChartView& chart);

signals:
    void moved(std::optional<double> place);

private:
    std::vector<ChartView*> m_charts;
};

} // namespace quadrille::app
