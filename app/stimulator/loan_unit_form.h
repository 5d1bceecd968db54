// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/loans.h"

#include <optional>

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLineEdit;

namespace quadrille::app
{

/// One unit of the practice: its number, of which stimulator it is, when it is to be checked.
class LoanUnitForm : public EntryDialog
{
    Q_OBJECT

public:
    /// A unit without id is a new one.
    LoanUnitForm(const Services& services, const LoanUnit& unit, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return m_unit.id ? &m_unit.version : nullptr; }

private:
    void fill();
    std::optional<Date> nextCheck() const;

    LoanUnit m_unit;
    QLineEdit* m_number;
    QComboBox* m_stimulator;
    QLineEdit* m_serialNumber;
    QLineEdit* m_nextCheck; ///< empty: not known
    QLineEdit* m_note;
    QCheckBox* m_archived;
};

} // namespace quadrille::app
