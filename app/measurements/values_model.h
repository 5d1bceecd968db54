// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/measurement_change.h"

#include <QAbstractTableModel>

#include <vector>

namespace quadrille::app
{

/// Every value of one series, the latest first, withdrawn ones among them: the chart in numbers.
class ValuesModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    ValuesModel(const QuantityText& text, QObject* parent);

    enum Column { dayColumn, sideColumn, valueColumn, trialsColumn, columnsInAll };

    void setValues(std::vector<Measurement> values);
    const Measurement& valueAt(int row) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    QString textOf(const Measurement& measurement, int column) const;

    const QuantityText& m_text;
    std::vector<Measurement> m_values;
};

} // namespace quadrille::app
