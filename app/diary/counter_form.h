// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/course.h"
#include "core/diary.h"

class QComboBox;
class QLineEdit;

namespace quadrille::app
{

/// What the unit's counter shows on a day: a new reading, or a correction of one.
class CounterForm : public EntryDialog
{
    Q_OBJECT

public:
    /// `compared`: what the comparison with the diary says, to be explained; empty without one.
    CounterForm(const Services& services, const Course& course, const CounterReading& reading,
                const QString& compared, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return m_before.id ? &m_before.version : nullptr; }

private:
    void layOut(const QString& compared);
    void fill();
    CounterReading entered() const;

    Course m_course;
    CounterReading m_before;
    QLineEdit* m_day;
    QLineEdit* m_uses;
    QLineEdit* m_minutes;
    QComboBox* m_explanation;
    QLineEdit* m_words;
};

} // namespace quadrille::app
