// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/electrode_set.h"

#include <vector>

class QLineEdit;

namespace quadrille::app
{

/// How long the practice lets pads last, by type. Sets that are handed out from now on get it.
class PadLifeForm : public EntryDialog
{
    Q_OBJECT

public:
    PadLifeForm(const Services& services, QWidget* parent);

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;

private:
    struct Row {
        ElectrodeType type;
        QLineEdit* uses;
        QLineEdit* months;
    };
    std::optional<Problem> problemIn(QLineEdit& field, int most) const;

    ElectrodeLives m_read;
    std::vector<Row> m_rows;
};

} // namespace quadrille::app
