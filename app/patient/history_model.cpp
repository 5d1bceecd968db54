// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/history_model.h"

#include "app/look/row_table.h"
#include "app/words/change_text.h"

#include <iterator>
#include <utility>

namespace quadrille::app
{

HistoryModel::HistoryModel(const QuantityText& text, QObject* parent)
    : QAbstractTableModel(parent)
    , m_text(text)
{
}

void HistoryModel::setChanges(std::vector<db::Change> changes)
{
    beginResetModel();
    m_changes = std::move(changes);
    endResetModel();
}

void HistoryModel::addChanges(std::vector<db::Change> earlier)
{
    if (earlier.empty()) {
        return;
    }
    const int first = rowCount();
    beginInsertRows({}, first, first + static_cast<int>(earlier.size()) - 1);
    m_changes.insert(m_changes.end(), std::make_move_iterator(earlier.begin()),
                     std::make_move_iterator(earlier.end()));
    endInsertRows();
}

int HistoryModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_changes.size());
}

int HistoryModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columnsInAll;
}

QString HistoryModel::textOf(const db::Change& change, int column) const
{
    switch (column) {
    case when:
        return changeMomentText(change, m_text);
    case who:
        return QString::fromStdString(change.practitionerName);
    case what:
        return changeText(change);
    case from:
        return changedValueText(change, change.from, m_text);
    default:
        return changedValueText(change, change.to, m_text);
    }
}

QVariant HistoryModel::data(const QModelIndex& index, int role) const
{
    const bool isText =
        role == Qt::DisplayRole || role == Qt::ToolTipRole || role == Qt::AccessibleTextRole;
    if (!index.isValid() || !isText) {
        return {};
    }
    const QString text = textOf(m_changes[static_cast<std::size_t>(index.row())], index.column());
    switch (role) {
    case Qt::DisplayRole:
        return text.simplified(); // one line a change; the whole text is in the tip
    case Qt::ToolTipRole:
        return text;
    case Qt::AccessibleTextRole:
        return spokenCell(index, text);
    default:
        return {};
    }
}

QVariant HistoryModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case when:
        return tr("When");
    case who:
        return tr("Who");
    case what:
        return tr("What");
    case from:
        return tr("From");
    default:
        return tr("To");
    }
}

} // namespace quadrille::app
