// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"
#include "app/words/screening_text.h"

#include "db/loans.h"

#include "core/course.h"
#include "core/course_state.h"
#include "core/people.h"
#include "core/plan.h"

#include <QList>
#include <QWidget>

#include <optional>
#include <vector>

class QHBoxLayout;
class QLabel;
class QPushButton;
class QTabBar;

namespace quadrille::app
{

/// What can be done with a course as a whole.
enum class CourseAct { pause, goOn, end, reopen };
/// "Pause the course…"
QString courseActName(CourseAct act);

/// Who the record is about, four facts of the course, the tabs of its pages and the main act of the
/// page shown.
class RecordHeader : public QWidget
{
    Q_OBJECT

public:
    RecordHeader(const Services& services, QWidget* parent);

    /// What the header tells of a course.
    struct Facts {
        Patient patient;
        std::vector<Course> courses; ///< for the choice of another
        std::optional<Course> course;
        std::vector<Plan> plans;
        std::optional<Stimulator> draftStimulator;
        std::vector<db::InventoryRow> lent; ///< units that the course has
        bool draftChanged = false;
        ScreeningHeadline screening;
        std::optional<Pause> pause = std::nullopt; ///< in which the course stands today
        QList<CourseAct> acts = {};                ///< that the course allows now
    };
    void show(const Facts& facts);
    QTabBar& tabs() { return *m_tabs; }
    /// Names a tab anew; the bar takes the room that the name needs.
    void nameTab(int index, const QString& name);
    /// Puts the acts of a page at the upper right, in place of the last ones.
    void setActs(const QList<QWidget*>& acts);
    /// Pixels beside the tabs.
    int roomForActs() const;

signals:
    void courseChosen(quadrille::CourseId course);
    void newCourseRequested();
    void changeCourseRequested();
    void changePatientRequested();
    void courseActRequested(quadrille::app::CourseAct act);
    void plansIssuedRequested();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    /// A caption, a bold line and a small one.
    struct Fact {
        QLabel* caption;
        QLabel* text;
        QLabel* small;
    };
    Fact addFact(QHBoxLayout& layout, const QString& caption, int stretch);
    void showCourse(const Facts& facts);
    void showPlan(const Facts& facts);
    void showStimulator(const Facts& facts);
    void fillCourseMenu(const Facts& facts);

    const Services m_services;
    QLabel* m_name;
    QLabel* m_born;
    QPushButton* m_courses;
    Fact m_course{};
    Fact m_plan{};
    Fact m_stimulator{};
    Fact m_screening{};
    QTabBar* m_tabs;
    QHBoxLayout* m_acts;
};

} // namespace quadrille::app
