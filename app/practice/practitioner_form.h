// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/people.h"

#include <memory>

namespace Ui
{
class PractitionerFields;
}

namespace quadrille::app
{

/// One practitioner: a new one, or the details of one.
class PractitionerForm : public EntryDialog
{
    Q_OBJECT

public:
    PractitionerForm(const Services& services, const Practitioner& practitioner, QWidget* parent);
    ~PractitionerForm() override;

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override
    {
        return m_practitioner.id ? &m_practitioner.version : nullptr;
    }

private:
    void fill();

    std::unique_ptr<Ui::PractitionerFields> m_ui;
    Practitioner m_practitioner;
};

} // namespace quadrille::app
