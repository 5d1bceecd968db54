// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "db/loans.h"

#include <QAbstractTableModel>

#include <vector>

namespace quadrille::app
{

/// The practice's single units, what is overdue first.
class InventoryModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { number, kind, lentTo, since, dueBack, safetyCheck, columnsInAll };

    InventoryModel(const QuantityText& text, QObject* parent);

    void setRows(std::vector<db::InventoryRow> rows, Date today);
    const std::vector<db::InventoryRow>& rows() const { return m_rows; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation,
                        int role = Qt::DisplayRole) const override;

private:
    QString textOf(const db::InventoryRow& row, int column) const;
    bool isOverdue(const db::InventoryRow& row, int column) const;

    const QuantityText& m_text;
    std::vector<db::InventoryRow> m_rows;
    Date m_today;
};

} // namespace quadrille::app
