// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/inventory_model.h"

#include "app/look/row_table.h"
#include "app/stimulator/inventory_text.h"

#include <QFont>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

InventoryModel::InventoryModel(const QuantityText& text, QObject* parent)
    : QAbstractTableModel(parent)
    , m_text(text)
{
}

void InventoryModel::setRows(std::vector<db::InventoryRow> rows, Date today)
{
    beginResetModel();
    m_today = today;
    m_rows = std::move(rows);
    std::ranges::sort(m_rows, [today](const db::InventoryRow& a, const db::InventoryRow& b) {
        return isMoreUrgent(a.unit, standingOn(a.unit, a.loan, today), b.unit,
                            standingOn(b.unit, b.loan, today));
    });
    endResetModel();
}

int InventoryModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int InventoryModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columnsInAll;
}

QString InventoryModel::textOf(const db::InventoryRow& row, int column) const
{
    switch (column) {
    case number:
        return QString::fromStdString(row.unit.inventoryNumber);
    case kind:
        return QString::fromStdString(row.stimulatorName);
    case lentTo:
        return row.unit.archived ? tr("no longer in use") : row.loan ? holderText(row) : tr("here");
    case since:
        return row.loan ? m_text.date(row.loan->lentOn) : QString();
    case dueBack:
        return row.loan ? dueText(row.loan->dueOn, m_today, m_text) : QString();
    default:
        return row.unit.archived ? QString() : dueText(row.unit.nextSafetyCheckOn, m_today, m_text);
    }
}

bool InventoryModel::isOverdue(const db::InventoryRow& row, int column) const
{
    const UnitStanding standing = standingOn(row.unit, row.loan, m_today);
    return (column == dueBack && standing.backOverdue) ||
           (column == safetyCheck && standing.checkOverdue);
}

QVariant InventoryModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const db::InventoryRow& row = m_rows[static_cast<std::size_t>(index.row())];
    const QString text = textOf(row, index.column());
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
        return text;
    case Qt::AccessibleTextRole:
        return spokenCell(index, text);
    case Qt::FontRole: {
        QFont font;
        font.setBold(index.column() == number || isOverdue(row, index.column()));
        return font;
    }
    default:
        return {};
    }
}

QVariant InventoryModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case number:
        return tr("Number");
    case kind:
        return tr("Stimulator");
    case lentTo:
        return tr("Lent to");
    case since:
        return tr("Since");
    case dueBack:
        return tr("Due back");
    default:
        return tr("Next safety check");
    }
}

} // namespace quadrille::app
