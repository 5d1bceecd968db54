// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/pads_model.h"

#include "app/look/row_table.h"
#include "app/words/electrode_text.h"

#include <QFont>

#include <algorithm>

namespace quadrille::app
{

PadsModel::PadsModel(const QuantityText& text, QObject* parent)
    : QAbstractTableModel(parent)
    , m_text(text)
{
}

void PadsModel::setSets(const std::vector<ElectrodeSet>& sets, const std::vector<DiaryEntry>& diary,
                        Date today)
{
    beginResetModel();
    m_rows.clear();
    for (const ElectrodeSet& set : sets) {
        m_rows.push_back({set, wearOf(set, diary, today)});
    }
    std::ranges::stable_sort(m_rows, [](const Row& a, const Row& b) {
        return a.wear.inUse != b.wear.inUse ? a.wear.inUse : a.set.issuedOn > b.set.issuedOn;
    });
    endResetModel();
}

const ElectrodeSet& PadsModel::setAt(int row) const
{
    return m_rows[static_cast<std::size_t>(row)].set;
}

const ElectrodeWear& PadsModel::wearAt(int row) const
{
    return m_rows[static_cast<std::size_t>(row)].wear;
}

std::vector<ElectrodeSet> PadsModel::setsInUse() const
{
    std::vector<ElectrodeSet> sets;
    for (const Row& row : m_rows) {
        if (row.wear.inUse && !row.set.outOfUseOn) {
            sets.push_back(row.set);
        }
    }
    return sets;
}

bool PadsModel::replacementDue() const
{
    return std::ranges::any_of(m_rows, [](const Row& row) { return row.wear.replacementDue(); });
}

int PadsModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int PadsModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columnsInAll;
}

QString PadsModel::textOf(const Row& row, int column) const
{
    switch (column) {
    case forColumn:
        return QString::fromStdString(row.set.description);
    case padsColumn:
        return electrodeSetName(row.set, m_text);
    case issuedColumn:
        return m_text.date(row.set.issuedOn);
    case usesColumn:
        return usesText(row.set, row.wear, m_text);
    case lifeColumn:
        return lifeText(row.set.life);
    default:
        return electrodeStateText(row.set, row.wear, m_text);
    }
}

QVariant PadsModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const Row& row = m_rows[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
        return textOf(row, index.column());
    case Qt::AccessibleTextRole:
        return spokenCell(index, textOf(row, index.column()));
    case Qt::FontRole: {
        QFont font;
        font.setStrikeOut(row.set.withdrawn);
        font.setBold(row.wear.replacementDue() && index.column() == stateColumn);
        return row.set.withdrawn || font.bold() ? QVariant(font) : QVariant();
    }
    default:
        return {};
    }
}

QVariant PadsModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case forColumn:
        return tr("For");
    case padsColumn:
        return tr("Pads");
    case issuedColumn:
        return tr("Handed out");
    case usesColumn:
        return tr("Uses");
    case lifeColumn:
        return tr("Life");
    default:
        return tr("State");
    }
}

} // namespace quadrille::app
