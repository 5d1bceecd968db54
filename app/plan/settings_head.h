// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan.h"
#include "core/stimulator.h"

#include <QFrame>

#include <cstddef>
#include <optional>

class QLabel;
class QPushButton;

namespace quadrille::app
{

/// The head of the settings of a block: the heads of their columns, the ways to the starting points
/// and to variants, and what the block started from.
class SettingsHead : public QFrame
{
    Q_OBJECT

public:
    explicit SettingsHead(QWidget* parent);

    /// `index`, `block`: the block in work, nothing while there is none.
    void showBlock(std::optional<std::size_t> index, const std::optional<Stimulator>& unit,
                   const Block* block, bool hasBlockBefore);

signals:
    void startingPointsRequested();
    /// The person wants to try variants of the block.
    void whatIfRequested();

private:
    QLabel* m_title;
    QPushButton* m_startingPoints;
    QPushButton* m_whatIf;
    QLabel* m_unit;
    QLabel* m_before;
    QLabel* m_origin;
};

} // namespace quadrille::app
