// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/plan/model_reader.h"
#include "app/words/quantity_text.h"

#include <QWidget>

class QLabel;
class QToolButton;

namespace quadrille::app
{

/// The fatigue ratios of a session against the block before, or the sentence why there are none.
/// Never without the words that they are of a model; what else limits them opens on demand.
class FatigueFigures : public QWidget
{
    Q_OBJECT

public:
    FatigueFigures(const QuantityText& text, QWidget* parent);

    void show(const ModelAnswer& answer);
    /// The model is being asked.
    void showPending();
    void clearFigures();

private:
    QString valuesOf(const ModelAnswer& answer, double FatigueRatio::*part) const;

    const QuantityText& m_text;
    QLabel* m_integral;
    QLabel* m_peak;
    QLabel* m_mark;
    QToolButton* m_more;
    QLabel* m_limits;
    QLabel* m_sentence;
};

} // namespace quadrille::app
