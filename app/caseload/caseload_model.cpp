// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_model.h"

#include "app/caseload/patient_search.h"

#include <algorithm>

namespace quadrille::app
{

namespace
{

QString joined(const TwoLines& lines)
{
    return lines.second.isEmpty() ? lines.first : lines.first + QStringLiteral("\n") + lines.second;
}

std::vector<std::string> wordsOf(const CaseloadWish& wish)
{
    std::vector<std::string> words;
    for (const QString& word : wantedWords(wish.search)) {
        words.push_back(word.toStdString());
    }
    return words;
}

} // namespace

CaseloadModel::CaseloadModel(CaseloadSource& source, const QuantityText& text, QObject* parent)
    : QAbstractTableModel(parent)
    , m_source(source)
    , m_text(text)
{
}

void CaseloadModel::reload()
{
    const auto current = m_source.current();
    if (!current) {
        return;
    }
    beginResetModel();
    m_entries.clear();
    m_current.clear();
    const Date today = m_source.today();
    for (const db::CaseloadFacts& facts : *current) {
        m_current.push_back(app::lineOf(facts, today));
    }
    sortByName(m_current, m_text.locale());
    m_endedInAll = m_source.countEnded({});
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

/// The first page of ended courses that the search matches; how many there are in all.
int CaseloadModel::findEnded()
{
    m_ended.clear();
    m_lastEnded.reset();
    const std::vector<std::string> words = wordsOf(m_wish);
    addEnded(m_source.ended(words, std::nullopt, endedPage));
    if (m_ended.size() < endedPage) {
        return static_cast<int>(m_ended.size());
    }
    return words.empty() ? m_endedInAll : m_source.countEnded(words);
}

void CaseloadModel::addEnded(const std::vector<db::CaseloadFacts>& page)
{
    for (const db::CaseloadFacts& facts : page) {
        m_ended.push_back(app::lineOf(facts, m_source.today()));
    }
    if (!page.empty()) {
        m_lastEnded = page.back();
    }
}

void CaseloadModel::rearrange()
{
    const int ended = findEnded();
    m_arrangement = arrange(m_current, m_wish, ended);
    m_arrangement.endedIsMore = !wordsOf(m_wish).empty() && ended >= db::mostCounted;
    m_rows.clear();
    for (const CaseloadArrangement::Group& group : m_arrangement.groups) {
        m_rows.push_back({group.kind, std::nullopt});
        for (const std::size_t line : group.rows) {
            m_rows.push_back({group.kind, line});
        }
    }
    if (m_arrangement.showsEnded) {
        m_rows.push_back({CaseloadGroup::ended, std::nullopt});
        for (std::size_t line = 0; line < m_ended.size(); ++line) {
            m_rows.push_back({CaseloadGroup::ended, line});
        }
    }
}

bool CaseloadModel::canFetchMore(const QModelIndex& parent) const
{
    return !parent.isValid() && m_arrangement.showsEnded &&
           (m_arrangement.endedIsMore || static_cast<int>(m_ended.size()) < m_arrangement.ended);
}

void CaseloadModel::fetchMore(const QModelIndex& parent)
{
    if (!canFetchMore(parent)) {
        return;
    }
    const auto page = m_source.ended(wordsOf(m_wish), m_lastEnded, endedPage);
    if (page.empty()) {
        // What is shown is all that there is; somebody else may have changed them meanwhile.
        m_arrangement.ended = static_cast<int>(m_ended.size());
        m_arrangement.endedIsMore = false;
        return;
    }
    const auto first = static_cast<int>(m_rows.size());
    beginInsertRows({}, first, first + static_cast<int>(page.size()) - 1);
    for (std::size_t i = 0; i < page.size(); ++i) {
        m_rows.push_back({CaseloadGroup::ended, m_ended.size() + i});
    }
    addEnded(page);
    endInsertRows();
}

bool CaseloadModel::isGroupHead(int row) const
{
    return row >= 0 && row < static_cast<int>(m_rows.size()) &&
           !m_rows[static_cast<std::size_t>(row)].line;
}

const CaseloadLine* CaseloadModel::lineOf(const Row& row) const
{
    if (!row.line) {
        return nullptr;
    }
    return row.group == CaseloadGroup::ended ? &m_ended[*row.line] : &m_current[*row.line];
}

const CaseloadLine* CaseloadModel::lineAt(int row) const
{
    return row < 0 || row >= static_cast<int>(m_rows.size())
               ? nullptr
               : lineOf(m_rows[static_cast<std::size_t>(row)]);
}

/// Reads what is missing from a little above the row to some screens below it.
void CaseloadModel::readAround(int row) const
{
    constexpr int above = 5;
    constexpr int below = 20;
    std::vector<PatientId> missing;
    const int last = std::min(row + below, static_cast<int>(m_rows.size()) - 1);
    for (int near = std::max(row - above, 0); near <= last; ++near) {
        const CaseloadLine* line = lineAt(near);
        if (line && !m_entries.contains(line->patient.key())) {
            missing.push_back(line->patient);
        }
    }
    const AdherenceRules rules = m_source.rules();
    for (const db::CaseloadRow& read : m_source.rows(missing)) {
        m_entries[read.patient.id->key()] =
            std::make_shared<CaseloadEntry>(entryOf(read, rules, m_source.today(), m_text));
    }
}

CaseloadEntryPointer CaseloadModel::entryAt(int row) const
{
    const CaseloadLine* line = lineAt(row);
    if (!line) {
        return nullptr;
    }
    if (!m_entries.contains(line->patient.key())) {
        readAround(row);
    }
    CaseloadEntryPointer& entry = m_entries[line->patient.key()];
    if (!entry) {
        // Archived or erased by somebody else since the lines were read; the next reload drops it.
        CaseloadEntry gone;
        gone.name = {line->name, {}};
        entry = std::make_shared<CaseloadEntry>(std::move(gone));
    }
    return entry;
}

std::optional<int> CaseloadModel::rowOf(PatientId patient) const
{
    for (int row = 0; row < static_cast<int>(m_rows.size()); ++row) {
        const CaseloadLine* line = lineAt(row);
        if (line && line->patient == patient) {
            return row;
        }
    }
    return std::nullopt;
}

int CaseloadModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
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
    if (isGroupHead(index.row())) {
        const bool shown = column == CaseloadColumn::margin &&
                           (role == Qt::DisplayRole || role == Qt::AccessibleTextRole);
        return shown ? headText(m_rows[static_cast<std::size_t>(index.row())].group) : QVariant();
    }
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole && role != Qt::ToolTipRole &&
        role != EntryRole) {
        return {};
    }
    const CaseloadEntryPointer entry = entryAt(index.row());
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
        return QVariant::fromValue(entry);
    default:
        return {};
    }
}

QString CaseloadModel::headText(CaseloadGroup group) const
{
    int count = group == CaseloadGroup::ended ? m_arrangement.ended : 0;
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
        return m_arrangement.endedIsMore ? tr("Ended, %1 or more").arg(number)
                                         : tr("Ended, %1").arg(number);
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
    if (!lineAt(index.row())) {
        return Qt::NoItemFlags;
    }
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
}

} // namespace quadrille::app
