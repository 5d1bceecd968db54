// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/diary_sheet.h"

#include <QString>
#include <QUndoCommand>

#include <functional>

namespace quadrille::app
{

/// One undo step: the sheet before and after. Signs typed into one field merge.
class ReplaceDiary : public QUndoCommand
{
public:
    /// `step` names what merges; empty never merges. `show` puts a sheet on the screen.
    ReplaceDiary(const QString& verb, QString step, DiarySheet before, DiarySheet after,
                 std::function<void(const DiarySheet&)> show);
    void undo() override;
    void redo() override;
    int id() const override;
    bool mergeWith(const QUndoCommand* next) override;

private:
    QString m_step;
    DiarySheet m_before;
    DiarySheet m_after;
    std::function<void(const DiarySheet&)> m_show;
    bool m_isNew = true; ///< the first redo comes with the act itself
};

} // namespace quadrille::app
