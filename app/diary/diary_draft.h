// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/diary_saving.h"

#include "core/diary_remarks.h"
#include "core/diary_sheet.h"

#include <QObject>
#include <QString>
#include <QUndoStack>

#include <functional>
#include <optional>
#include <vector>

namespace quadrille::app
{

/// The diary of one course while it is copied: a sheet, what was read of it, and a stack of undo
/// steps, each a verb of the trade that keeps the diary before and after.
class DiaryDraft : public QObject
{
    Q_OBJECT

public:
    explicit DiaryDraft(QObject* parent = nullptr);
    ~DiaryDraft() override;

    /// Work that was not saved, and what was read when it began.
    struct Unsaved {
        WrittenDiary base;
        WrittenDiary mine;
    };
    /// Starts afresh from what is on record. `unsaved` becomes one undoable step.
    void load(CourseRecords records, DiaryForm form, const std::optional<Unsaved>& unsaved);
    /// Plans, pauses or settings changed on file; the work goes on.
    void setForm(DiaryForm form);
    /// What is on record was read again: it goes together with what was typed, or waits for the
    /// save where both clash.
    void setRecords(CourseRecords records);
    /// It was saved, and this is what the file holds now.
    void markSaved(CourseRecords records);
    /// Goes on from what somebody else saved, with `diary` on the screen. Undo begins anew.
    void goOnFrom(const WrittenDiary& theirs, const WrittenDiary& diary);

    const DiarySheet& sheet() const { return m_sheet; }
    const WrittenDiary& base() const { return m_base; }
    bool isChanged() const { return m_sheet.diary() != m_base; }
    /// The records as they would be if it were saved now.
    CourseRecords preview() const { return withDiary(m_records, m_sheet.diary()); }
    const CourseRecords& records() const { return m_records; }
    /// What keeps it from being saved.
    std::vector<DiaryRemark> remarksInTheWay() const;
    QUndoStack& undoStack() { return m_undo; }

    using Act = std::function<DiaryAnswer(DiarySheet&)>;
    /// Carries out what writes, as one undoable step. Steps of typing in one field merge.
    DiaryAnswer write(const QString& verb, const Act& act);
    DiaryAnswer typeSign(const QString& verb, const Act& act);
    /// Carries out what moves.
    DiaryAnswer move(const Act& act);

signals:
    /// The diary differs from before.
    void changed();
    /// Another field has the place, or another page is shown.
    void moved();

private:
    void show(const WrittenDiary& diary);
    /// `mine`, begun on `base`, over what the records say now; the base goes along with them.
    WrittenDiary putTogether(const WrittenDiary& base, const WrittenDiary& mine);
    DiaryAnswer apply(const QString& verb, const QString& step, const Act& act);

    CourseRecords m_records;
    WrittenDiary m_base;
    DiarySheet m_sheet;
    int m_turn = 0; ///< signs typed in one field without leaving it merge
    QUndoStack m_undo;
};

} // namespace quadrille::app
