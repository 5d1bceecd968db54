// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/counter_comparison.h"

#include <QAbstractTableModel>

#include <vector>

namespace quadrille::app
{

/// The readings of a course, the earliest first, each with its comparison.
class CounterModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column {
        dayColumn,
        usesColumn,
        minutesColumn,
        comparedColumn,
        explanationColumn,
        columns
    };

    CounterModel(const QuantityText& text, QObject* parent);
    void setReadings(std::vector<CounterReading> readings,
                     const std::vector<CounterComparison>& comparisons);
    const CounterReading& readingAt(int row) const;
    /// Against the reading before; empty for the first.
    QString comparedAt(int row) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation,
                        int role = Qt::DisplayRole) const override;

private:
    QString cell(int row, int column) const;
    const CounterComparison* comparisonOf(int row) const;

    const QuantityText& m_text;
    std::vector<CounterReading> m_readings;
    std::vector<CounterComparison> m_comparisons;
};

} // namespace quadrille::app
