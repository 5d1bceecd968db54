// SPDX-License-Identifier: GPL-3.0-or-later
// What can be done with the chosen block and the chosen site.
#include "app/plan/block_sheet.h"
#include "app/plan/list_acts.h"
#include "app/plan/plan_draft.h"

#include "core/block_edits.h"

#include <QKeySequence>
#include <QMenu>
#include <QPushButton>

namespace quadrille::app
{

void BlockSheet::addBlockActs()
{
    const auto always = [](std::size_t) { return true; };
    const auto blocks = [this]() -> const std::vector<Block>& { return m_draft.draft().blocks; };
    m_blockActs->add(
        tr("&Copy"), QKeySequence(Qt::CTRL | Qt::Key_D),
        [this](std::size_t block) { m_draft.copyBlock(block); }, always);
    m_blockActs->add(
        tr("Move &earlier"), QKeySequence(Qt::ALT | Qt::Key_Up),
        [this](std::size_t block) { m_draft.moveBlock(block, block - 1); },
        [](std::size_t block) { return block > 0; });
    m_blockActs->add(
        tr("Move &later"), QKeySequence(Qt::ALT | Qt::Key_Down),
        [this](std::size_t block) { m_draft.moveBlock(block, block + 1); },
        [blocks](std::size_t block) { return block + 1 < blocks().size(); });
    m_blockActs->add(
        tr("A &week more"), QKeySequence(Qt::ALT | Qt::Key_Right),
        [this](std::size_t block) { m_draft.lengthenBlock(block, 1); },
        [blocks](std::size_t block) { return blocks()[block].weeks < mostWeeksOfBlock; });
    m_blockActs->add(
        tr("A week le&ss"), QKeySequence(Qt::ALT | Qt::Key_Left),
        [this](std::size_t block) { m_draft.lengthenBlock(block, -1); },
        [blocks](std::size_t block) { return blocks()[block].weeks > leastWeeksOfBlock; });
    m_blockActs->add(
        tr("S&plit at a week…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_D),
        [this](std::size_t block) { emit splitBlockRequested(block); },
        [blocks](std::size_t block) { return splitWeeksOf(blocks(), block).has_value(); });
    m_blockActs->addSeparator();
    m_blockActs->add(
        tr("&Remove"), QKeySequence(Qt::Key_Delete),
        [this](std::size_t block) { m_draft.removeBlock(block); }, always);
    m_moreBlock->setMenu(m_blockActs->menu());
}

void BlockSheet::addSiteActs()
{
    const auto always = [](std::size_t) { return true; };
    const auto hasUnit = [this](std::size_t) { return m_draft.stimulator().has_value(); };
    m_siteActs->add(
        tr("C&hange…"), {}, [this](std::size_t site) { emit changeSiteRequested(site); }, hasUnit);
    m_siteActs->add(
        tr("&Copy to another channel"), QKeySequence(Qt::CTRL | Qt::Key_D),
        [this](std::size_t site) { copySite(site); }, hasUnit);
    m_siteActs->addSeparator();
    m_siteActs->add(
        tr("&Remove"), QKeySequence(Qt::Key_Delete),
        [this](std::size_t site) { m_draft.removeSite(site); }, always);
    m_moreSite->setMenu(m_siteActs->menu());
}

void BlockSheet::copySite(std::size_t index)
{
    const Block* block = m_draft.block();
    const auto unit = m_draft.stimulator();
    if (block == nullptr || !unit || index >= block->sites.size()) {
        return;
    }
    auto channel = freeChannel(*block, *unit);
    if (!channel && block->siteOrder == SiteOrder::oneAfterAnother) {
        channel = block->sites[index].channel; // in turn, a channel can be used again
    }
    if (!channel) {
        emit said(tr("All channels of the unit have a site. Remove one, or let the sites run in "
                     "turn, then copy again."));
        return;
    }
    const bool shared = sharesTiming(*block, *unit);
    m_draft.copySite(index, *channel);
    const QString copied =
        tr("Site %1 copied to channel %2, without its amplitudes.").arg(index + 1).arg(*channel);
    emit said(shared ? tr("%1 All channels of this unit share their timing.").arg(copied) : copied);
}

} // namespace quadrille::app
