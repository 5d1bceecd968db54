// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/chart_spec.h"

#include <QWidget>

class QCustomPlot;

namespace quadrille::app
{

/// Draws a ChartSpec in the colours of its palette. The only room that knows QCustomPlot.
class ChartView : public QWidget
{
    Q_OBJECT

public:
    explicit ChartView(QWidget* parent = nullptr);

    void setSpec(const ChartSpec& spec);
    const ChartSpec& spec() const { return m_spec; }
    /// Room around the plot for numbers and names, px.
    void setPlotMargins(const QMargins& margins);

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void draw();
    void drawAxes();
    void drawLines();
    void drawBars();
    void drawTexts();
    void drawSpans();

    QCustomPlot* m_plot;
    ChartSpec m_spec;
    QMargins m_margins{40, 8, 8, 24};
};

} // namespace quadrille::app
