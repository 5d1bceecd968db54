// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/charts/variant_chart.h"
#include "app/window/services.h"

#include <QFrame>

class QLabel;

namespace quadrille::app
{

class ChartView;

/// The predicted peak force of each contraction, the block and its variants over one another; where
/// nothing may be compared, the sentence why.
class WhatIfForces : public QFrame
{
    Q_OBJECT

public:
    WhatIfForces(const Services& services, QWidget* parent);

    void show(const VariantForces& forces);
    void showSentence(const QString& sentence);

private:
    void readOut();
    /// What became of an act on the chart; stands until the figures change.
    void say(const QString& sentence);

    const QuantityText& m_text;
    ChartView* m_chart;
    QLabel* m_readout;
    QLabel* m_said;
    QLabel* m_sentence;
};

} // namespace quadrille::app
