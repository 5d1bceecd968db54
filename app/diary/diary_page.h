// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/diary/diary_draft.h"
#include "app/window/services.h"

#include "core/course.h"

#include <QList>
#include <QTimer>
#include <QWidget>

#include <optional>

class QLabel;
class QPushButton;
class QScrollArea;
class QStackedLayout;

namespace quadrille::app
{

class CounterSheet;
class DiaryGrid;
class DiarySide;
class SegmentRow;

/// The Diary page of a patient's record: the printed pages, copied square by square, and what the
/// unit has counted. What is not saved is kept in the store and comes back after a crash.
class DiaryPage : public QWidget
{
    Q_OBJECT

public:
    DiaryPage(const Services& services, QWidget* parent);

    /// Shows a course; unsaved work on the one shown before is kept.
    void setCourse(const Course& course);
    /// Lets go of the course and of what was not saved: its record is gone.
    void closeCourse();
    /// The course, its plans or its pauses are others on file; what was typed stays.
    void courseChanged(const Course& course);
    DiaryDraft& draft() { return m_draft; }
    /// For the upper right of the record.
    QList<QWidget*> acts() const;
    /// The sheets beside the page.
    QWidget* side() const;
    void focusFirst();
    /// Saves in one change. Nothing is saved while an entry can't be.
    void save();

public slots:
    /// Keeps unsaved work in the store at once.
    void keepNow();

signals:
    void said(const QString& sentence);
    /// The person wants to take over a diary file.
    void importRequested();
    /// The diary on the screen is another, saved or not.
    void shown();

protected:
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Content {
        CourseRecords records;
        AdherenceRules rules;
        DiaryForm form;
        std::optional<DiaryDraft::Unsaved> unsaved;
    };
    std::optional<Content> readContent(const Course& course);
    void layOut();
    QWidget* head();
    QWidget* received();
    void refresh();
    void showHead();
    void showReceived();
    void showRemark();
    void showPlace();
    /// Somebody else changed the same parts: shows both and goes on from what is chosen.
    void settle(const db::DiarySaving& saving);
    void showSaved();

    const Services m_services;
    std::optional<Course> m_course;
    AdherenceRules m_rules;
    DiaryDraft m_draft;
    DiaryAnswer m_refusal;          ///< of the last key
    std::optional<int> m_pageShown; ///< at the side, as the diary stands
    QTimer m_keepSoon;
    DiaryGrid* m_grid;
    DiarySide* m_side;
    CounterSheet* m_counter;
    SegmentRow* m_weeks;
    QStackedLayout* m_stack;
    QScrollArea* m_scroll;
    QLabel* m_nothing;
    QLabel* m_page;
    QPushButton* m_before;
    QPushButton* m_after;
    QLabel* m_hint;
    QLabel* m_strip;
    QLabel* m_received;
    QPushButton* m_receiveHere;
    QPushButton* m_withdraw;
    QPushButton* m_save;
};

} // namespace quadrille::app
