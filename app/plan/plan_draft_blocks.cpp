// SPDX-License-Identifier: GPL-3.0-or-later
// The verbs on whole blocks and on copies of sites, and variants that are adopted.
#include "app/plan/plan_draft.h"

#include "core/block_edits.h"

#include <utility>

namespace quadrille::app
{

void PlanDraft::copyBlock(std::size_t index)
{
    if (index >= m_draft.blocks.size()) {
        return;
    }
    apply(tr("Copy block %1").arg(index + 1), {},
          [&](Draft& draft) { draft.blocks = withBlockCopied(std::move(draft.blocks), index); });
    setCurrentBlock(index + 1);
}

void PlanDraft::moveBlock(std::size_t index, std::size_t to)
{
    const std::size_t count = m_draft.blocks.size();
    if (index >= count || to >= count || index == to) {
        return;
    }
    apply(tr("Move block %1").arg(index + 1), {},
          [&](Draft& draft) { draft.blocks = withBlockMoved(std::move(draft.blocks), index, to); });
    setCurrentBlock(to);
}

void PlanDraft::setBlockWeeks(std::size_t index, int weeks)
{
    if (index >= m_draft.blocks.size()) {
        return;
    }
    setCurrentBlock(index);
    apply(tr("Change the weeks of block %1").arg(index + 1),
          QStringLiteral("edge/block %1").arg(index), [&](Draft& draft) {
              draft.blocks = withBlockLength(std::move(draft.blocks), index, weeks);
          });
}

void PlanDraft::lengthenBlock(std::size_t index, int byWeeks)
{
    if (index < m_draft.blocks.size()) {
        endStep();
        setBlockWeeks(index, m_draft.blocks[index].weeks + byWeeks);
        endStep();
    }
}

void PlanDraft::splitBlock(std::size_t index, CourseWeek at)
{
    if (index >= m_draft.blocks.size()) {
        return;
    }
    const std::size_t before = m_draft.blocks.size();
    apply(tr("Split block %1").arg(index + 1), {},
          [&](Draft& draft) { draft.blocks = withBlockSplit(std::move(draft.blocks), index, at); });
    if (m_draft.blocks.size() > before) {
        setCurrentBlock(index + 1);
    }
}

void PlanDraft::adopt(const Block& variant, const QString& name, const QString& reason)
{
    const auto current = currentBlock();
    if (!current) {
        return;
    }
    apply(tr("Adopt variant %1").arg(name), {}, [&](Draft& draft) {
        draft.blocks[*current] = variant;
        draft.adoptedReasons.push_back(reason.simplified().toStdString());
    });
}

void PlanDraft::copySite(std::size_t index, int channel)
{
    applyToBlock(tr("Copy site %1").arg(index + 1), {}, [&](Block& block) {
        if (index < block.sites.size()) {
            block.sites.push_back(siteOnChannel(block.sites[index], channel));
        }
    });
}

void PlanDraft::applyStartingPoint(const Block& applied)
{
    const auto current = currentBlock();
    if (!current || !applied.origin) {
        return;
    }
    Draft after = m_draft;
    after.blocks[*current] = applied;
    push(tr("Start from %1").arg(QString::fromStdString(applied.origin->name)), {},
         std::move(after));
}

} // namespace quadrille::app
