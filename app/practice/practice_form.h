// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/people.h"

#include <memory>
#include <optional>

namespace Ui
{
class PracticeFields;
}

namespace quadrille::app
{

/// Name, address and telephone of the practice. At first start it also takes the first
/// practitioner.
class PracticeForm : public EntryDialog
{
    Q_OBJECT

public:
    PracticeForm(const Services& services, QWidget* parent);
    ~PracticeForm() override;
    /// The practitioner entered at first start.
    std::optional<PractitionerId> firstPractitioner() const { return m_practitioner; }

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return &m_before.version; }

private:
    std::unique_ptr<Ui::PracticeFields> m_ui;
    Practice m_before;
    bool m_isFirst = false;
    std::optional<PractitionerId> m_practitioner;
};

} // namespace quadrille::app
