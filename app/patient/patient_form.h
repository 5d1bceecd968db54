// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/course.h"
#include "core/people.h"

#include <memory>
#include <optional>

namespace Ui
{
class PatientFields;
}

namespace quadrille::app
{

class SegmentFields;

/// Details of a patient. A new patient gets the first course at once.
class PatientForm : public EntryDialog
{
    Q_OBJECT

public:
    /// A new patient, with the next free reference filled in.
    PatientForm(const Services& services, QWidget* parent);
    /// The details of a patient that is stored.
    PatientForm(const Services& services, const Patient& patient, QWidget* parent);
    ~PatientForm() override;

    /// The patient that was saved; nothing before.
    std::optional<PatientId> savedPatient() const { return m_saved; }
    std::optional<CourseId> savedCourse() const { return m_savedCourse; }

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return m_before ? &m_before->version : nullptr; }

private:
    void setUp();
    void fill(const Patient& patient);
    void addLanguage(const QString& tag);
    std::optional<Problem> courseProblem() const;
    std::optional<Problem> detailProblem() const;
    Patient patient() const;
    Result<void> saveNew();

    std::unique_ptr<Ui::PatientFields> m_ui;
    SegmentFields* m_segments = nullptr; ///< the dialog's
    std::optional<Patient> m_before;
    std::optional<PatientId> m_saved;
    std::optional<CourseId> m_savedCourse;
};

} // namespace quadrille::app
