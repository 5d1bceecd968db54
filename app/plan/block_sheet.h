// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/plan.h"

#include <QFrame>
#include <QStringList>

class QComboBox;
class QLabel;
class QListWidget;
class QPushButton;

namespace quadrille::app
{

class PlanDraft;

/// The stimulator, the blocks and the sites of the current block, each as a short list. Lists show
/// two or three lines a row; the acts sit in the heads.
class BlockSheet : public QFrame
{
    Q_OBJECT

public:
    BlockSheet(PlanDraft& draft, const QuantityText& text, QWidget* parent);

    /// Puts the keyboard on the list of blocks.
    void focusBlocks();

public slots:
    /// Shows the draft's unit again, whatever was chosen in the list.
    void refreshStimulators();

signals:
    void stimulatorChosen(quadrille::StimulatorId stimulator);
    void addStimulatorRequested();
    void changeStimulatorRequested();
    void addSiteRequested();
    void changeSiteRequested(std::size_t site);

private:
    void layOut();
    QFrame* head(const QString& title, QPushButton* first, QPushButton* second);
    void refresh();
    void refreshBlocks();
    void refreshSites();
    void showVerdict();
    QStringList blockLines(const Block& block) const;
    std::optional<std::size_t> currentSite() const;

    PlanDraft& m_draft;
    const QuantityText& m_text;
    QComboBox* m_stimulator;
    QPushButton* m_changeStimulator;
    QLabel* m_verdict;
    QListWidget* m_blocks;
    QPushButton* m_addBlock;
    QPushButton* m_removeBlock;
    QListWidget* m_sites;
    QPushButton* m_addSite;
    QPushButton* m_removeSite;
    QLabel* m_noBlocks;
    QLabel* m_noSites;
};

} // namespace quadrille::app
