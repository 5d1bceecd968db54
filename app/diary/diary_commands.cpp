// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary/diary_commands.h"

#include <utility>

namespace quadrille::app
{

ReplaceDiary::ReplaceDiary(const QString& verb, QString step, DiarySheet before, DiarySheet after,
                           std::function<void(const DiarySheet&)> show)
    : QUndoCommand(verb)
    , m_step(std::move(step))
    , m_before(std::move(before))
    , m_after(std::move(after))
    , m_show(std::move(show))
{
}

void ReplaceDiary::undo()
{
    m_before.endTyping();
    m_show(m_before);
}

void ReplaceDiary::redo()
{
    if (!std::exchange(m_isNew, false)) {
        m_after.endTyping();
    }
    m_show(m_after);
}

int ReplaceDiary::id() const
{
    return 1; // all steps may try to merge; mergeWith decides
}

bool ReplaceDiary::mergeWith(const QUndoCommand* next)
{
    const auto* step = dynamic_cast<const ReplaceDiary*>(next);
    if (step == nullptr || m_step.isEmpty() || step->m_step != m_step) {
        return false;
    }
    m_after = step->m_after;
    setObsolete(m_after.diary() == m_before.diary());
    return true;
}

} // namespace quadrille::app
