// SPDX-License-Identifier: GPL-3.0-or-later
// Under each week of the grid what was done of what was asked for.
#pragma once

#include "app/words/quantity_text.h"

#include "core/adherence.h"

#include <QString>
#include <QWidget>

#include <vector>

namespace quadrille::app
{

/// Three lines of figures on the columns of the grid above: sessions done, of how many, minutes.
class WeekTally : public QWidget
{
    Q_OBJECT

public:
    WeekTally(const QuantityText& text, QWidget* parent);

    void setWeeks(const std::vector<WeekAdherence>& weeks);
    /// Where the columns stand, px, and which weeks they are.
    struct Columns {
        int left = 0;
        int pitch = 24;
        int first = 1;
        int count = 0;
    };
    void setColumns(const Columns& columns);
    /// The same in words.
    QString spoken() const;
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const QuantityText& m_text;
    std::vector<WeekAdherence> m_weeks;
    Columns m_columns;
};

} // namespace quadrille::app
