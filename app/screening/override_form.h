// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/screening.h"

class QComboBox;
class QPlainTextEdit;

namespace quadrille::app
{

/// Going ahead all the same: who answers for it, and why. Permanent; it lifts this one question's
/// block until the next screening.
class OverrideForm : public EntryDialog
{
    Q_OBJECT

public:
    /// `head` and `blocks` say what is gone ahead of.
    OverrideForm(const Services& services, const Screening& screening, const std::string& question,
                 const QString& head, const QString& blocks, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;

private:
    Screening m_screening;
    std::string m_question;
    QComboBox* m_practitioner;
    QPlainTextEdit* m_reason;
};

} // namespace quadrille::app
