// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/measurement_change.h"
#include "core/plan.h"

#include <QList>
#include <QWidget>

#include <optional>
#include <vector>

class QLabel;
class QPushButton;
class QStackedLayout;
class QTableView;

namespace quadrille::app
{

class ChosenSheet;
class MeasurementsModel;

/// The Measurements page of a patient's record: the kinds of the course with baseline, last value
/// and change, and below them the chosen one.
class MeasurementsPage : public QWidget
{
    Q_OBJECT

public:
    MeasurementsPage(const Services& services, QWidget* parent);

    /// Shows a course; its plans say how many weeks it has and, where nobody has, which side it
    /// treats.
    void open(const Course& course, const std::vector<Plan>& plans);
    /// For the upper right of the record.
    QList<QWidget*> acts() const;
    /// The form for a visit.
    void enter();
    /// Where work on this page begins.
    void focusFirst();

signals:
    void said(const QString& sentence);

private:
    void layOut();
    QWidget* emptySheet();
    QWidget* kindsSheet();
    void readAll();
    void showTreated();
    void showChosen();

    const Services m_services;
    std::optional<Course> m_course;
    std::vector<Plan> m_plans;
    std::vector<Measurement> m_all;
    std::optional<TreatedSide> m_treatedSide;
    QStackedLayout* m_stack;
    MeasurementsModel* m_model;
    QTableView* m_table;
    QLabel* m_treated;
    ChosenSheet* m_chosen;
    QPushButton* m_enter;
};

} // namespace quadrille::app
