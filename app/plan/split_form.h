// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/block_edits.h"

#include <cstddef>
#include <optional>

class QSpinBox;

namespace quadrille::app
{

/// At which week of the course a block is split. Takes nothing into the draft by itself.
class SplitForm : public EntryDialog
{
    Q_OBJECT

public:
    /// Proposes the `current` week where the second half can begin with it, else the middle.
    SplitForm(const Services& services, std::size_t block, SplitWeeks weeks,
              std::optional<CourseWeek> current, QWidget* parent);
    /// The first week of the second half.
    CourseWeek week() const;

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;

private:
    QSpinBox* m_week;
};

} // namespace quadrille::app
