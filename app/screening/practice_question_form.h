// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/screening.h"

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace quadrille::app
{

/// A question that the practice adds to the built-in ones: a new one, or a change of one.
class PracticeQuestionForm : public EntryDialog
{
    Q_OBJECT

public:
    PracticeQuestionForm(const Services& services, const PracticeQuestion& question,
                         QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return m_question.id ? &m_question.version : nullptr; }

private:
    void layOut();
    void fill();

    PracticeQuestion m_question;
    QLineEdit* m_wording;
    QComboBox* m_class;
    QComboBox* m_reach;
    QLineEdit* m_reason;
    QLineEdit* m_advice;
    QComboBox* m_advicePlace;
    QCheckBox* m_archived;
};

} // namespace quadrille::app
