// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/what_if.h"

#include <QFrame>
#include <QTimer>

class QComboBox;
class QDoubleSpinBox;
class QGridLayout;
class QLabel;
class QPushButton;
class QSpinBox;

namespace quadrille::app
{

class QuantityBox;
class SegmentRow;

/// Which variant is in work, what may be asked of it, and the answer. Amplitude can't be asked for.
class WhatIfSearch : public QFrame
{
    Q_OBJECT

public:
    /// The wishes begin with what the block has.
    WhatIfSearch(const WhatIf& whatIf, const QuantityText& text, QWidget* parent);

    std::size_t variant() const;
    void setVariant(std::size_t variant);
    void showAnswer(const QString& sentence);
    /// The model is being asked; after a while it says so and can be stopped.
    void showPending();

signals:
    void wished(const quadrille::Wish& wish);
    void stopRequested();
    void variantChosen();

protected:
    /// Return in a field of a wish asks for it.
    void keyPressEvent(QKeyEvent* event) override;

private:
    void addVariants(QGridLayout& grid);
    void addRatio(QGridLayout& grid);
    void addLength(QGridLayout& grid, const WhatIf& whatIf);
    void addContractions(QGridLayout& grid, const WhatIf& whatIf);
    QPushButton* addFind(QGridLayout& grid, int row, const QString& what);
    void endPending();

    const QuantityText& m_text;
    SegmentRow* m_variants;
    QDoubleSpinBox* m_ratio;
    QComboBox* m_keptLength;
    QuantityBox* m_length;
    QComboBox* m_keptDose;
    QSpinBox* m_contractions;
    std::vector<std::pair<QPushButton*, std::vector<QWidget*>>> m_wishes;
    QLabel* m_answer;
    QPushButton* m_stop;
    QTimer m_patience;
};

} // namespace quadrille::app
