// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/house_settings.h"

class QLineEdit;

namespace quadrille::app
{

/// What settings of the practice are called and what finds them: kept for the first time, or called
/// otherwise. Their figures stay as they are.
class HouseSettingsForm : public EntryDialog
{
    Q_OBJECT

public:
    HouseSettingsForm(const Services& services, const HouseSettings& kept, QWidget* parent);

    /// The name under which they were saved.
    QString savedName() const;

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return m_kept.id ? &m_kept.version : nullptr; }

private:
    void fill();

    HouseSettings m_kept;
    QLineEdit* m_name;
    QLineEdit* m_muscle;
    QLineEdit* m_condition;
    QLineEdit* m_note;
};

} // namespace quadrille::app
