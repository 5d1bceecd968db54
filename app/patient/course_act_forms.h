// SPDX-License-Identifier: GPL-3.0-or-later
// Pausing, going on, ending and reopening a course: a small form each. What is saved says
// core/course_acts.h.
#pragma once

#include "app/window/entry_dialog.h"

#include "core/course_state.h"

#include <optional>
#include <vector>

class QFormLayout;
class QLineEdit;
class QPlainTextEdit;

namespace quadrille::app
{

/// What the forms share: a sentence, days and a reason.
class CourseActForm : public EntryDialog
{
    Q_OBJECT

public:
    CourseActForm(const Services& services, const Course& course, const QString& title,
                  const QString& act, QWidget* parent);

protected:
    void addSentence(const QString& sentence);
    QLineEdit* addDay(const QString& label, const QString& name, std::optional<Date> day);
    QPlainTextEdit* addReason(const QString& hint);
    std::optional<Date> dayIn(const QLineEdit& field) const;
    /// Not a date, although something stands in the field.
    std::optional<Problem> dayProblem(QLineEdit* field, bool mayBeEmpty) const;
    static std::optional<Problem> reasonProblem(QPlainTextEdit* field, const QString& sentence);
    static std::string textIn(const QPlainTextEdit& field);
    /// Tells who shows the course.
    void announce();
    /// The course as it is in the file now.
    Result<void> readCourse();

    Course m_course;

private:
    QFormLayout* m_form;
};

/// From a day, with or without an end.
class PauseForm : public CourseActForm
{
    Q_OBJECT

public:
    /// `pauses`: all of the course.
    PauseForm(const Services& services, const Course& course, std::vector<Pause> pauses,
              QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;

private:
    std::optional<Problem> daysProblem() const;
    Pause wanted() const;

    std::vector<Pause> m_pauses;
    QLineEdit* m_from;
    QLineEdit* m_until;
    QPlainTextEdit* m_reason;
};

/// The first day on which the course goes on after a pause.
class GoOnForm : public CourseActForm
{
    Q_OBJECT

public:
    GoOnForm(const Services& services, const Course& course, const Pause& pause, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return &m_pause.version; }

private:
    Pause m_pause;
    QLineEdit* m_from;
};

/// The last day of a course and why it ends.
class EndCourseForm : public CourseActForm
{
    Q_OBJECT

public:
    EndCourseForm(const Services& services, const Course& course, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return &m_course.version; }

private:
    QLineEdit* m_lastDay;
    QPlainTextEdit* m_reason;
};

/// Why a course that ended is taken up again.
class ReopenForm : public CourseActForm
{
    Q_OBJECT

public:
    ReopenForm(const Services& services, const Course& course, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override { return readCourse(); }
    Version* recordVersion() override { return &m_course.version; }

private:
    QPlainTextEdit* m_reason;
};

} // namespace quadrille::app
