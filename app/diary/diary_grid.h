// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/diary/diary_draft.h"
#include "app/diary/diary_geometry.h"
#include "app/words/quantity_text.h"

#include "core/lived_days.h"

#include <QWidget>

class QLineEdit;

namespace quadrille::app
{

/// The page on which a diary is copied: squares and fields as printed. Tab goes from field to
/// field, arrows from day to day, and leaves at the last field of the last page.
class DiaryGrid : public QWidget
{
    Q_OBJECT

public:
    DiaryGrid(DiaryDraft& draft, const QuantityText& text, QWidget* parent);

    /// Thresholds by which sessions count as done.
    void setRules(const AdherenceRules& rules);
    /// As many weeks side by side as there is room for, up to `most`.
    void setMostWeeks(int most);
    /// The width to fill, px.
    void setRoom(int width);
    /// Whether entries can be made.
    void setWritable(bool writable) { m_writable = writable; }
    int weeksShown() const { return m_geometry.weeks(); }
    /// Where the place is, px.
    QRect placeRect() const;
    /// The field of pad or remark, while it is written in.
    QLineEdit* notesField() const { return m_notes; }
    const DiaryGeometry& geometryOfPage() const { return m_geometry; }
    /// Takes over what stands in the field of pad or remark.
    void commitNotes();
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    /// One sentence for the status line.
    void said(const QString& sentence);
    /// Why the last key wrote nothing; nothing: it did.
    void refused(const DiaryAnswer& refusal);

protected:
    bool event(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    void refresh();
    void layOutWeeks();
    void placeNotes();
    bool moveKey(const QKeyEvent& key);
    bool fieldKey(const QKeyEvent& key);
    bool verbKey(const QKeyEvent& key);
    bool signKey(const QKeyEvent& key);
    void write(const QString& verb, DiaryAnswer (DiarySheet::*act)());
    void move(const DiaryDraft::Act& act);
    void answer(const DiaryAnswer& refusal);
    void pressSession(const DiaryPlace& place, bool onMark);
    bool hasAnyFocus() const;

    DiaryDraft& m_draft;
    const QuantityText& m_text;
    AdherenceRules m_rules;
    CourseRecords m_preview;
    CourseAsLived m_lived;
    DiaryGeometry m_geometry;
    QLineEdit* m_notes;
    int m_mostWeeks = weeksOfDiaryPage;
    int m_room = 0;
    bool m_writable = true;
};

} // namespace quadrille::app
