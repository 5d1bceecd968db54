// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/electrode_set.h"

#include <vector>

class QComboBox;
class QFormLayout;
class QLineEdit;
class QSpinBox;

namespace quadrille::app
{

/// A set of pads: a new one that is handed out, or the details of one.
class ElectrodeSetForm : public EntryDialog
{
    Q_OBJECT

public:
    /// `set`: a new one without a key, filled with what is likely, or one that is stored. `inUse`:
    /// sets that a new one may take the place of.
    ElectrodeSetForm(const Services& services, const ElectrodeSet& set,
                     const std::vector<ElectrodeSet>& inUse, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return m_before.id ? &m_before.version : nullptr; }

private:
    void layOut();
    void fill();
    void fillLife();
    void showSides();
    std::optional<Problem> lifeProblem() const;
    std::optional<Length> side(const QLineEdit& field) const;
    std::optional<int> number(const QLineEdit& field) const;
    ElectrodeSet entered() const;
    ElectrodeType type() const;
    bool isRound() const;

    ElectrodeSet m_before;
    std::vector<ElectrodeSet> m_inUse;
    ElectrodeLives m_lives;
    QFormLayout* m_form;
    QLineEdit* m_issuedOn;
    QLineEdit* m_description;
    QComboBox* m_type;
    QComboBox* m_shape;
    QLineEdit* m_width;
    QLineEdit* m_height;
    QSpinBox* m_pads;
    QLineEdit* m_uses;
    QLineEdit* m_months;
    QComboBox* m_replaces;
    QLineEdit* m_outOfUseOn;
};

} // namespace quadrille::app
