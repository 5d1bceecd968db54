// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_model.h"

namespace quadrille::app
{

namespace
{

QString joined(const TwoLines& lines)
{
    return lines.second.isEmpty() ? lines.first : lines.first + QStringLiteral("\n") + lines.second;
}

} // namespace

CaseloadModel::CaseloadModel(const QuantityText& text, QObject* parent)
    : QAbstractTableModel(parent)
    , m_text(text)
    , m_entries(std::make_shared<std::vector<CaseloadEntry>>())
{
}

void CaseloadModel::setRows(const std::vector<db::CaseloadRow>& rows, Date today)
{
    auto entries = std::make_shared<std::vector<CaseloadEntry>>();
    entries->reserve(rows.size());
    for (const db::CaseloadRow& row : rows) {
        entries->push_back(entryOf(row, today, m_text));
    }
    beginResetModel();
    m_entries = std::move(entries);
    rearrange();
    endResetModel();
}

void CaseloadModel::setWish(const CaseloadWish& wish)
{
    beginResetModel();
    m_wish = wish;
    rearrange();
    endResetModel();
}

void CaseloadModel::rearrange()
{
    m_arrangement = arrange(*m_entries, m_wish, m_text.locale());
    m_lines.clear();
    for (const CaseloadArrangement::Group& group : m_arrangement.groups) {
        m_lines.push_back({group.kind, std::nullopt});
        for (const std::size_t row : group.rows) {
            m_lines.push_back({group.kind, row});
        }
    }
}

bool CaseloadModel::isGroupHead(int row) const
{
    return row >= 0 && row < static_cast<int>(m_lines.size()) &&
           !m_lines[static_cast<std::size_t>(row)].entry;
}

const CaseloadEntry* CaseloadModel::entryAt(int row) const
{
    if (row < 0 || row >= static_cast<int>(m_lines.size()) || isGroupHead(row)) {
        return nullptr;
    }
    return &(*m_entries)[*m_lines[static_cast<std::size_t>(row)].entry];
}

std::optional<int> CaseloadModel::rowOf(PatientId patient) const
{
    for (int row = 0; row < static_cast<int>(m_lines.size()); ++row) {
        const CaseloadEntry* entry = entryAt(row);
        if (entry && entry->patient == patient) {
            return row;
        }
    }
    return std::nullopt;
}

int CaseloadModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

int CaseloadModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : caseloadColumns;
}

QVariant CaseloadModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) {
        return {};
    }
    const auto column = static_cast<CaseloadColumn>(index.column());
    const CaseloadEntry* entry = entryAt(index.row());
    if (!entry) {
        const bool shown = column == CaseloadColumn::margin &&
                           (role == Qt::DisplayRole || role == Qt::AccessibleTextRole);
        return shown ? headText(m_lines[static_cast<std::size_t>(index.row())].group) : QVariant();
    }
    switch (role) {
    case Qt::DisplayRole:
        return cellText(*entry, column);
    case Qt::AccessibleTextRole:
        return spokenRow(*entry, m_text);
    case Qt::ToolTipRole:
        return column == CaseloadColumn::attention && !entry->otherReasons.isEmpty()
                   ? joined(entry->waiting) + QStringLiteral("\n\n") +
                         entry->otherReasons.join(QLatin1Char('\n'))
                   : cellText(*entry, column);
    case EntryRole:
        return QVariant::fromValue(CaseloadEntryPointer(m_entries, entry));
    default:
        return {};
    }
}

QString CaseloadModel::headText(CaseloadGroup group) const
{
    int count = 0;
    for (const CaseloadArrangement::Group& shown : m_arrangement.groups) {
        count = shown.kind == group ? static_cast<int>(shown.rows.size()) : count;
    }
    const QString number = m_text.count(count);
    switch (group) {
    case CaseloadGroup::needsAttention:
        return tr("Needs attention, %1").arg(number);
    case CaseloadGroup::nothingWaiting:
        return tr("Nothing waiting, %1").arg(number);
    case CaseloadGroup::ended:
        return tr("Ended, %1").arg(number);
    }
    return {};
}

QVariant CaseloadModel::cellText(const CaseloadEntry& entry, CaseloadColumn column) const
{
    switch (column) {
    case CaseloadColumn::margin:
    case CaseloadColumn::grid:
        return {};
    case CaseloadColumn::name:
        return joined(entry.name);
    case CaseloadColumn::course:
        return joined(entry.courseLines);
    case CaseloadColumn::week: {
        const TwoLines words = weekWords(entry, m_text);
        return words.first + words.second;
    }
    case CaseloadColumn::plan:
        return joined(entry.plan);
    case CaseloadColumn::attention:
        return joined(entry.waiting);
    }
    return {};
}

QVariant CaseloadModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (static_cast<CaseloadColumn>(section)) {
    case CaseloadColumn::margin:
        return QString();
    case CaseloadColumn::name:
        return tr("Name, age");
    case CaseloadColumn::course:
        return tr("Course");
    case CaseloadColumn::week:
        return tr("Week");
    case CaseloadColumn::grid:
        return tr("4 weeks");
    case CaseloadColumn::plan:
        return tr("Plan");
    case CaseloadColumn::attention:
        return tr("Attention");
    }
    return {};
}

Qt::ItemFlags CaseloadModel::flags(const QModelIndex& index) const
{
    if (!entryAt(index.row())) {
        return Qt::NoItemFlags;
    }
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
}

} // namespace quadrille::app
