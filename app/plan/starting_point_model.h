// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/starting_point_text.h"

#include <QAbstractTableModel>

#include <vector>

namespace quadrille::app
{

/// The figures of a starting point as a table: what, as cited, how far it was checked, with the
/// unit.
class StartingPointModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { what, cited, standing, withUnit, columnsInAll };

    using QAbstractTableModel::QAbstractTableModel;

    void show(std::vector<PointRow> rows, const QString& unitName);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::vector<PointRow> m_rows;
    QString m_unitName;
};

} // namespace quadrille::app
