// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/plan.h"
#include "core/plan_figures.h"

#include <QFrame>

#include <optional>

class QLabel;

namespace quadrille::app
{

class ChartView;
class PulseChart;

/// One cycle and one pulse of the first site of a block, drawn to scale, with the block before
/// dashed.
class CycleSheet : public QFrame
{
    Q_OBJECT

public:
    CycleSheet(const Services& services, QWidget* parent);

    /// Nothing is drawn while the block has no timing.
    void show(const Block* block, const std::optional<BlockFigures>& figures,
              const Block* blockBefore, const std::optional<BlockFigures>& before,
              const QString& nameBefore);

signals:
    void said(const QString& sentence);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    const QuantityText& m_text;
    QLabel* m_title;
    QLabel* m_pulseTitle;
    ChartView* m_cycle;
    PulseChart* m_pulse;
};

} // namespace quadrille::app
