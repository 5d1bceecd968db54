// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "db/history.h"

#include <QAbstractTableModel>

#include <vector>

namespace quadrille::app
{

/// The changes of a patient as a table: when, who, what, from, to. Read only.
class HistoryModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { when, who, what, from, to, columnsInAll };

    HistoryModel(const QuantityText& text, QObject* parent);

    void setChanges(std::vector<db::Change> changes);
    void addChanges(std::vector<db::Change> earlier);
    const std::vector<db::Change>& changes() const { return m_changes; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    QString textOf(const db::Change& change, int column) const;

    const QuantityText& m_text;
    std::vector<db::Change> m_changes;
};

} // namespace quadrille::app
