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

class ListActs;
class PlanDraft;

/// The stimulator, the blocks and the sites of the current block, each as a short list. Lists show
/// a few lines a row: a block only what changed against the one before it and the size of the step.
/// The acts sit in the heads and in a menu for each list, whose keys work in the list.
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
    void splitBlockRequested(std::size_t block);
    /// One sentence for the status line.
    void said(const QString& sentence);

private:
    void layOut();
    void connectAll();
    void addBlockActs();
    void addSiteActs();
    QFrame* head(const QString& title, QPushButton* first, QPushButton* second);
    void refresh();
    void refreshBlocks();
    void refreshSites();
    void showVerdict();
    void fillBlock(std::size_t index);
    QStringList siteLines(std::size_t index) const;
    void copySite(std::size_t index);
    std::optional<std::size_t> currentSite() const;

    PlanDraft& m_draft;
    const QuantityText& m_text;
    QComboBox* m_stimulator;
    QPushButton* m_changeStimulator;
    QLabel* m_verdict;
    QListWidget* m_blocks;
    QPushButton* m_addBlock;
    ListActs* m_blockActs;
    QPushButton* m_moreBlock;
    QListWidget* m_sites;
    QPushButton* m_addSite;
    ListActs* m_siteActs;
    QPushButton* m_moreSite;
    QLabel* m_noBlocks;
    QLabel* m_noSites;
};

} // namespace quadrille::app
