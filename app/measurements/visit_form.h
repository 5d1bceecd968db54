// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/course.h"
#include "core/measurement.h"

#include <vector>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace quadrille::app
{

class VisitRows;

/// All measurements of a visit in one go: a row a kind, those of the last visit first.
class VisitForm : public EntryDialog
{
    Q_OBJECT

public:
    /// `measurements`: what the course has so far.
    VisitForm(const Services& services, const Course& course,
              const std::vector<Measurement>& measurements, QWidget* parent);

    /// How many values were saved.
    std::size_t savedValues() const { return m_savedValues; }

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void layOut();
    QWidget* addingLine();
    void fillKinds();
    void refreshAdding();
    void addRow();
    void addKeptRows();
    void keepRows();
    void orderTabs();

    const Course m_course;
    QLineEdit* m_day;
    VisitRows* m_rows;
    QLineEdit* m_rowsKept; ///< hidden: which rows the form had, for the day after a crash
    QComboBox* m_kind;
    QComboBox* m_subject;
    QLineEdit* m_unit;
    QCheckBox* m_sides;
    QPushButton* m_add;
    QLabel* m_addNote;
    std::size_t m_savedValues = 0;
};

} // namespace quadrille::app
