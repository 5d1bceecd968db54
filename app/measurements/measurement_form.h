// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/measurement.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace quadrille::app
{

/// Corrects one measurement. The old value stays in the history.
class MeasurementForm : public EntryDialog
{
    Q_OBJECT

public:
    MeasurementForm(const Services& services, const Measurement& measurement, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;
    Result<void> readAgain() override;
    Version* recordVersion() override { return &m_before.version; }

private:
    void layOut();
    void fill();
    void showNote();
    Measurement changed() const;

    Measurement m_before;
    const MeasurementKind* m_kind;
    QLineEdit* m_day;
    QComboBox* m_side;
    QLineEdit* m_value;
    QLabel* m_note;
    QLineEdit* m_method;
    QLineEdit* m_device;
};

} // namespace quadrille::app
