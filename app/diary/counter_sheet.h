// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/counter_comparison.h"
#include "core/course.h"

#include <QFrame>

#include <optional>
#include <vector>

class QLabel;
class QPushButton;
class QTableView;

namespace quadrille::app
{

class CounterModel;

/// What the unit has counted, a row a reading, each held against the diary since the one before.
class CounterSheet : public QFrame
{
    Q_OBJECT

public:
    CounterSheet(const Services& services, QWidget* parent);

    /// `diary`: what is on record, for the comparison.
    void open(const Course& course, const CourseRecords& diary);
    void close();

signals:
    void said(const QString& sentence);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void layOut();
    void refreshActs();
    void add();
    void correct();
    void withdraw();

    const Services m_services;
    std::optional<Course> m_course;
    CounterModel* m_model;
    QTableView* m_table;
    QLabel* m_sentence;
    QPushButton* m_add;
    QPushButton* m_correct;
    QPushButton* m_withdraw;
};

} // namespace quadrille::app
