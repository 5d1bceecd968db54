// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "db/loans.h"

#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QLineEdit;

namespace quadrille::app
{

/// Lends a unit to a course, or changes the day on which a lent one is due. What is to be thought
/// of before lending stands below the fields; the decision stays open.
class LoanForm : public EntryDialog
{
    Q_OBJECT

public:
    /// `row`: the unit, with its loan where it is out. `preferred`: the course to begin with.
    LoanForm(const Services& services, const db::InventoryRow& row,
             std::optional<CourseId> preferred, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;

private:
    bool isLent() const { return m_row.loan.has_value(); }
    void readCourses();
    void showLoan();
    void chooseCourse(std::optional<CourseId> preferred);
    const db::LendingCourse* course() const;
    std::optional<Date> dateIn(const QLineEdit& field) const;
    void courseChanged();
    void judge();

    db::InventoryRow m_row;
    Stimulator m_stimulator;
    std::vector<db::LendingCourse> m_courses;
    QComboBox* m_course;
    QLineEdit* m_lentOn;
    QLineEdit* m_dueOn; ///< empty: not agreed
    QLabel* m_remarks;
};

/// Ends a loan: on which day the unit came back.
class TakeBackForm : public EntryDialog
{
    Q_OBJECT

public:
    TakeBackForm(const Services& services, const db::InventoryRow& row, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;

private:
    db::InventoryRow m_row;
    QLineEdit* m_day;
};

} // namespace quadrille::app
