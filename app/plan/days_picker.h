// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/plan.h"

#include <QWidget>

#include <array>

class QPushButton;
class QSpinBox;
class QToolButton;

namespace quadrille::app
{

/// Chooses the days of a block: certain weekdays, or so many days of the week whichever they are.
class DaysPicker : public QWidget
{
    Q_OBJECT

public:
    DaysPicker(const QuantityText& text, QWidget* parent);

    /// Shows a schedule without announcing it.
    void setSchedule(const Schedule& schedule);

signals:
    void scheduleChosen(const quadrille::Schedule& schedule);

private:
    void chooseDays();
    void switchKind();

    std::array<QToolButton*, 7> m_days{};
    QPushButton* m_any;
    QSpinBox* m_count;
    Schedule m_schedule;
};

} // namespace quadrille::app
