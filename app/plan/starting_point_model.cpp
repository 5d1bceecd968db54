// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/starting_point_model.h"

#include "app/look/look.h"
#include "app/look/row_table.h"
#include "app/look/tokens.h"

#include <QApplication>

#include <utility>

namespace quadrille::app
{

void StartingPointModel::show(std::vector<PointRow> rows, const QString& unitName)
{
    beginResetModel();
    m_rows = std::move(rows);
    m_unitName = unitName;
    endResetModel();
}

int StartingPointModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int StartingPointModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columnsInAll;
}

QVariant StartingPointModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const PointRow& row = m_rows[static_cast<std::size_t>(index.row())];
    const QString texts[columnsInAll] = {row.what, row.cited, row.standing, row.withUnit};
    const bool marked =
        (index.column() == standing && row.unsure) || (index.column() == withUnit && row.differs);
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
        return texts[index.column()];
    case Qt::AccessibleTextRole:
        return spokenCell(index, texts[index.column()]);
    case Qt::FontRole:
        return fontOf(marked || index.column() == cited ? TextStyle::strong : TextStyle::text,
                      appliedFactor());
    case Qt::ForegroundRole:
        return marked ? QVariant(tokensOf(QApplication::palette()).warnInk) : QVariant();
    default:
        return {};
    }
}

QVariant StartingPointModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation == Qt::Horizontal && role == Qt::ToolTipRole && section == withUnit) {
        return m_unitName;
    }
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case what:
        return tr("Figure");
    case cited:
        return tr("As published or kept");
    case standing:
        return tr("How far it was checked");
    case withUnit:
        return tr("With this unit");
    default:
        return {};
    }
}

} // namespace quadrille::app
