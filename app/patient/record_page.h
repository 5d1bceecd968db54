// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/course.h"
#include "core/people.h"

#include <QList>
#include <QWidget>

#include <optional>
#include <vector>

class QPushButton;
class QStackedWidget;

namespace quadrille::app
{

class HandoutPage;
class HistoryPage;
class MeasurementsPage;
class PadsPage;
class PlanPage;
class RecordHeader;
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
    std::optional<PatientId> patient() const { return m_patient ? m_patient->id : std::nullopt; }
    PlanPage& planPage() { return *m_planPage; }
    HandoutPage& handoutPage() { return *m_handoutPage; }
    HistoryPage& historyPage() { return *m_historyPage; }
    MeasurementsPage& measurementsPage() { return *m_measurementsPage; }
    PadsPage& padsPage() { return *m_padsPage; }

    void showPage(int index);
    /// Where work on the page that is shown begins.
    void focusFirst();
    int pageCount() const;
    int currentPage() const;
    void newCourse();
    void changePatient();
    /// The form for the values of a visit, on the Measurements page.
    void enterMeasurements();
    /// The form for a new set of pads, on the Pads page.
    void issuePads();

    // In the order of the job.
    static constexpr int measurementsIndex = 0;
    static constexpr int planIndex = 1;
    static constexpr int handoutIndex = 2;
    static constexpr int padsIndex = 3;
    static constexpr int historyIndex = 4;

signals:
    void said(const QString& sentence);
    void backRequested();

private:
    void layOut();
    void connectAll();
    void showCourse(const std::optional<Course>& course);
    void changeCourse();
    void showPageAt(int index);
    void refreshFrame();
    void refreshHandout();
    void refreshMeasured();
    void refreshActs();
    std::optional<Course> courseOf(CourseId id) const;

    const Services m_services;
    std::optional<Patient> m_patient;
    std::vector<Course> m_courses;
    std::optional<Course> m_course;
    RecordHeader* m_header;
    QStackedWidget* m_pages;
    PlanPage* m_planPage;
    HandoutPage* m_handoutPage;
    HistoryPage* m_historyPage;
    MeasurementsPage* m_measurementsPage;
    PadsPage* m_padsPage;
    QWidget* m_noCourse;
    TimeColumn* m_time;
    QPushButton* m_save;
    QPushButton* m_revert;
    QPushButton* m_issue;
    QList<QWidget*> m_acts;
};

} // namespace quadrille::app
