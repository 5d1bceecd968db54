// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/plan/model_reader.h"
#include "app/window/services.h"

#include <QFrame>

class QLabel;

namespace quadrille::app
{

class ChartView;

/// The predicted peak force of each contraction over a session, beside the block before; where the
/// model must not compare them, the sentence why.
class ForceSheet : public QFrame
{
    Q_OBJECT

public:
    ForceSheet(const Services& services, QWidget* parent);

    /// `index`: of the block in its plan. `block` is null where there is none.
    void show(const ModelAnswer& answer, const Block* block, std::size_t index);
    void showPending();
    void showNothing();

signals:
    void said(const QString& sentence);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void showSentence(const QString& sentence);
    void readOut();

    const QuantityText& m_text;
    QLabel* m_title;
    QLabel* m_mark;
    ChartView* m_chart;
    QLabel* m_readout;
    QLabel* m_sentence;
};

} // namespace quadrille::app
