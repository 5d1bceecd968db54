// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/people.h"

#include <optional>

class QComboBox;
class QLineEdit;

namespace quadrille::app
{

/// Erasing everything of a patient on legal request: the ground, and the reference typed once more.
/// It can't be undone.
class EraseForm : public EntryDialog
{
    Q_OBJECT

public:
    EraseForm(const Services& services, const Patient& patient, QWidget* parent);

    /// The patient is erased, but the file could not be written anew yet.
    const std::optional<Error>& notScrubbed() const { return m_notScrubbed; }

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;

private:
    void layOut();

    Patient m_patient;
    QComboBox* m_ground;
    QLineEdit* m_reference;
    std::optional<Error> m_notScrubbed;
};

} // namespace quadrille::app
