// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan.h"

#include <QString>
#include <QUndoCommand>

#include <functional>

namespace quadrille::app
{

/// One undo step: the draft before and after. Steps of the same name merge while a box is being
/// turned.
class ReplaceDraft : public QUndoCommand
{
public:
    /// `step` names what merges ("onTime/block 2/turn 7"); empty never merges. `show` puts a draft
    /// on the screen.
    ReplaceDraft(const QString& verb, QString step, Draft before, Draft after,
                 std::function<void(const Draft&)> show);
    void undo() override;
    void redo() override;
    int id() const override;
    bool mergeWith(const QUndoCommand* next) override;

private:
    QString m_step;
    Draft m_before;
    Draft m_after;
    std::function<void(const Draft&)> m_show;
};

} // namespace quadrille::app
