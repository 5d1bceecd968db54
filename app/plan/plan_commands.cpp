// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/plan_commands.h"

#include <utility>

namespace quadrille::app
{

ReplaceDraft::ReplaceDraft(const QString& verb, QString step, Draft before, Draft after,
                           std::function<void(const Draft&)> show)
    : QUndoCommand(verb)
    , m_step(std::move(step))
    , m_before(std::move(before))
    , m_after(std::move(after))
    , m_show(std::move(show))
{
}

void ReplaceDraft::undo()
{
    m_show(m_before);
}

void ReplaceDraft::redo()
{
    m_show(m_after);
}

int ReplaceDraft::id() const
{
    return 1; // all steps may try to merge; mergeWith decides
}

bool ReplaceDraft::mergeWith(const QUndoCommand* next)
{
    const auto* step = dynamic_cast<const ReplaceDraft*>(next);
    if (step == nullptr || m_step.isEmpty() || step->m_step != m_step) {
        return false;
    }
    m_after = step->m_after;
    setObsolete(m_after == m_before);
    return true;
}

} // namespace quadrille::app
