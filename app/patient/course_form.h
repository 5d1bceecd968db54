// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/course.h"

#include <memory>
#include <optional>

namespace Ui
{
class CourseFields;
}

namespace quadrille::app
{

/// A course of a patient: a new one, or its problem, start and last day.
class CourseForm : public EntryDialog
{
    Q_OBJECT

public:
    /// `course.patient` is filled; without `course.id` it is a new one.
    CourseForm(const Services& services, const Course& course, QWidget* parent);
    ~CourseForm() override;
    std::optional<CourseId> savedCourse() const { return m_saved; }

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return m_course.id ? &m_course.version : nullptr; }

private:
    void fill();

    std::unique_ptr<Ui::CourseFields> m_ui;
    Course m_course;
    std::optional<CourseId> m_saved;
};

} // namespace quadrille::app
