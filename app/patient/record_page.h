// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "db/loans.h"

#include "core/course.h"
#include "core/follow_up.h"
#include "core/lived_days.h"
#include "core/people.h"

#include <QList>
#include <QWidget>

#include <optional>
#include <vector>

class QPushButton;
class QStackedWidget;
class QUndoStack;

namespace quadrille::app
{

class DiaryPage;
class HandoutPage;
class HistoryPage;
class MeasurementsPage;
class PadsPage;
class PlanPage;
class RecordHeader;
enum class CourseAct;
class ScreeningPage;
class TimeColumn;

/// A patient's record: margin, header, the pages, and the time column at the right.
class RecordPage : public QWidget
{
    Q_OBJECT

public:
    RecordPage(const Services& services, QWidget* parent);

    /// Shows a patient, with a course of choice or the latest. False (and a sentence said) when it
    /// can't be read.
    bool open(PatientId patient, std::optional<CourseId> course);
    /// Lets go of the patient, whose record is gone.
    void close();
    std::optional<PatientId> patient() const { return m_patient ? m_patient->id : std::nullopt; }
    std::optional<CourseId> course() const { return m_course ? m_course->id : std::nullopt; }
    PlanPage& planPage() { return *m_planPage; }
    HandoutPage& handoutPage() { return *m_handoutPage; }
    HistoryPage& historyPage() { return *m_historyPage; }
    ScreeningPage& screeningPage() { return *m_screeningPage; }
    MeasurementsPage& measurementsPage() { return *m_measurementsPage; }
    PadsPage& padsPage() { return *m_padsPage; }
    DiaryPage& diaryPage() { return *m_diaryPage; }
    /// Of the page shown: entries of the diary, else the draft of the plan.
    QUndoStack& undoStack();
    /// Saves what the page shown has unsaved: the diary, else the draft of the plan.
    void save();
    /// Keeps unsaved work of all pages in the store.
    void keepNow();

    void showPage(int index);
    int pageCount() const;
    /// Where work on the page shown begins.
    void focusFirst();
    int currentPage() const;
    void newCourse();
    /// Whether the course allows the act as it stands today.
    bool canCarryOut(CourseAct act) const;
    /// Pauses the course, lets it go on, ends or reopens it, after a form. Does nothing where it
    /// can't.
    void carryOut(CourseAct act);
    void changePatient();
    /// The form for the values of a visit, on the Measurements page.
    void enterMeasurements();
    /// The form for a new set of pads, on the Pads page.
    void issuePads();
    /// Takes over a diary that comes as a file.
    void importDiaryFile();

    // In the order of the job.
    static constexpr int screeningIndex = 0;
    static constexpr int measurementsIndex = 1;
    static constexpr int planIndex = 2;
    static constexpr int handoutIndex = 3;
    static constexpr int diaryIndex = 4;
    static constexpr int padsIndex = 5;
    static constexpr int historyIndex = 6;

signals:
    void said(const QString& sentence);
    void backRequested();
    /// The course shown, or how it stands, is another.
    void courseShown();
    /// Another page of the record.
    void pageShown();

private:
    void layOut();
    void connectAll();
    void connectPages();
    void connectTime();
    void showCourse(const std::optional<Course>& course);
    void changeCourse();
    /// Reads the course again, the draft on the screen apart.
    void refreshCourse();
    void showPageAt(int index);
    void readDiary();
    /// The diary as it is copied, saved or not, in the time column.
    void showDiary();
    void showHeader();
    void refreshFrame();
    void refreshHandout();
    /// Enters what left the program, when and by whom.
    void recordHandout(Medium medium);
    void readLoans();
    void refreshMeasured();
    void refreshActs();
    QList<QWidget*> planActs() const;
    void resizeEvent(QResizeEvent* event) override;
    std::optional<Course> courseOf(CourseId id) const;

    const Services m_services;
    std::optional<Patient> m_patient;
    std::vector<Course> m_courses;
    std::optional<Course> m_course;
    CourseRecords m_diary; ///< of the course, for the time column
    AdherenceRules m_rules;
    std::vector<db::InventoryRow> m_lent; ///< units that the course has
    std::optional<PlanId> m_handoutPlan;  ///< the plan that the pages of the handout show
    RecordHeader* m_header;
    QStackedWidget* m_pages;
    ScreeningPage* m_screeningPage;
    PlanPage* m_planPage;
    HandoutPage* m_handoutPage;
    HistoryPage* m_historyPage;
    MeasurementsPage* m_measurementsPage;
    PadsPage* m_padsPage;
    DiaryPage* m_diaryPage;
    QWidget* m_noCourse;
    TimeColumn* m_time;
    QPushButton* m_save;
    QPushButton* m_revert;
    QPushButton* m_clinic;
    QPushButton* m_issue;
    QList<QWidget*> m_acts;
};

} // namespace quadrille::app
