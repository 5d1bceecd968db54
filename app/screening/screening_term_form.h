// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

class QSpinBox;

namespace quadrille::app
{

/// For how many months a signed screening holds in this practice.
class ScreeningTermForm : public EntryDialog
{
    Q_OBJECT

public:
    ScreeningTermForm(const Services& services, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;

private:
    QSpinBox* m_months;
    Version m_version = 0;
};

} // namespace quadrille::app
