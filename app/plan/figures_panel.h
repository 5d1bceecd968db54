// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/course_projection.h"
#include "core/plan.h"
#include "core/plan_figures.h"

#include <QFrame>

#include <array>
#include <optional>
#include <vector>

class QGridLayout;
class QLabel;
class QVBoxLayout;

namespace quadrille::app
{

class FatigueFigures;
class LimitBar;

/// What the settings ask of the muscle and the skin: one session, each site, one week. What cannot
/// be computed is "—", with the reason; nothing is guessed.
class FiguresPanel : public QFrame
{
    Q_OBJECT

public:
    FiguresPanel(const QuantityText& text, QWidget* parent);

    /// `before`: figures of the block before, named beside this week's.
    void show(const Block* block, const std::optional<BlockFigures>& figures,
              const std::optional<BlockFigures>& before);
    /// What all blocks of the draft ask for together; nothing without a unit.
    void showPlan(const std::optional<PlanTotals>& totals);
    FatigueFigures& fatigue() { return *m_fatigue; }

protected:
    bool event(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    /// Sentences wrap: the panel asks for the height that they take at its width.
    void keepHeight();
    QLabel* addSection(const QString& title, QGridLayout*& grid, int columns);
    QLabel* addFigure(QGridLayout& grid, const QString& name, const QString& objectName);
    /// One more value in the row that was added last.
    QLabel* addSecondValue(QGridLayout& grid, const QString& name, const QString& objectName);
    void addWeekAndPlan();
    void showSession(const Block& block, const BlockFigures& figures);
    void showSites(const BlockFigures& figures);
    void rebuildSites(std::size_t sites);
    void showWeek(const Block& block, const BlockFigures& figures,
                  const std::optional<BlockFigures>& before);
    void clearFigures();
    void hideDose();

    const QuantityText& m_text;
    QVBoxLayout* m_layout;
    QLabel* m_sessionTitle = nullptr;
    QLabel* m_contractions = nullptr;
    QLabel* m_onTime = nullptr;
    QLabel* m_duty = nullptr;
    QLabel* m_ratio = nullptr;
    QLabel* m_pulses = nullptr;
    static constexpr std::size_t doseFigures = 6;
    QWidget* m_sites = nullptr;
    std::vector<std::array<QLabel*, doseFigures>> m_doseValues; ///< per site
    QLabel* m_noDose = nullptr;
    LimitBar* m_bar = nullptr;
    QLabel* m_barText = nullptr;
    FatigueFigures* m_fatigue = nullptr;
    QLabel* m_planSessions = nullptr;
    QLabel* m_planContractions = nullptr;
    QLabel* m_planOnTime = nullptr;
    QLabel* m_planCharge = nullptr;
    QLabel* m_weekSessions = nullptr;
    QLabel* m_weekContractions = nullptr;
    QLabel* m_weekOnTime = nullptr;
    QLabel* m_weekCharge = nullptr;
    QLabel* m_weekNote = nullptr;
};

} // namespace quadrille::app
