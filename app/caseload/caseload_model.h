// SPDX-License-Identifier: GPL-3.0-or-later
// The rows of the caseload for the table: heads of groups and patients.
#pragma once

#include "app/caseload/caseload_entry.h"
#include "app/caseload/caseload_order.h"
#include "app/caseload/caseload_source.h"

#include <QAbstractTableModel>

#include <cstdint>
#include <memory>
#include <unordered_map>

namespace quadrille::app
{

/// Columns of the table; the first is the margin with its signs.
enum class CaseloadColumn { margin, name, course, week, grid, plan, attention };
inline constexpr int caseloadColumns = 7;

using CaseloadEntryPointer = std::shared_ptr<const CaseloadEntry>;

/// A row is the head of a group or a patient. All current patients are held as lines, which order
/// and count; ended courses arrive page by page as the table scrolls. A whole entry is read and
/// worded when its row is looked at, with its neighbours, and kept until the next reload().
class CaseloadModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Role {
        EntryRole = Qt::UserRole, ///< CaseloadEntryPointer; nothing for the head of a group
    };
    /// So many ended courses are read at a time.
    static constexpr int endedPage = 100;

    /// `source` outlives the model. Empty until reload().
    CaseloadModel(CaseloadSource& source, const QuantityText& text, QObject* parent = nullptr);

    /// Reads the caseload anew; the wish stays. What can't be read stays as it was.
    void reload();
    void setWish(const CaseloadWish& wish);
    const CaseloadWish& wish() const { return m_wish; }

    /// All current patients by name, whatever is shown.
    const std::vector<CaseloadLine>& currentLines() const { return m_current; }
    /// All ended courses, whatever is searched.
    int endedInAll() const { return m_endedInAll; }
    const CaseloadArrangement& arrangement() const { return m_arrangement; }
    bool isGroupHead(int row) const;
    /// The patient of a row; nothing for the head of a group.
    const CaseloadLine* lineAt(int row) const;
    /// All words of a row; nothing for the head of a group.
    CaseloadEntryPointer entryAt(int row) const;
    /// The row that shows a patient now.
    std::optional<int> rowOf(PatientId patient) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation,
                        int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool canFetchMore(const QModelIndex& parent) const override;
    void fetchMore(const QModelIndex& parent) override;

private:
    /// Either the head of a group or a patient.
    struct Row {
        CaseloadGroup group = CaseloadGroup::needsAttention;
        std::optional<std::size_t> line = std::nullopt; ///< in m_current or m_ended, by the group
    };
    void rearrange();
    int findEnded();
    void addEnded(const std::vector<db::CaseloadFacts>& page);
    const CaseloadLine* lineOf(const Row& row) const;
    void readAround(int row) const;
    QString headText(CaseloadGroup group) const;
    QVariant cellText(const CaseloadEntry& entry, CaseloadColumn column) const;

    CaseloadSource& m_source;
    QuantityText m_text;
    std::vector<CaseloadLine> m_current;
    std::vector<CaseloadLine> m_ended; ///< what has arrived of those that the search matches
    std::optional<db::CaseloadFacts> m_lastEnded;
    int m_endedInAll = 0;
    CaseloadWish m_wish;
    CaseloadArrangement m_arrangement;
    std::vector<Row> m_rows;
    /// By the patient's key. Shared with the variants that data() hands out.
    mutable std::unordered_map<std::int64_t, CaseloadEntryPointer> m_entries;
};

} // namespace quadrille::app

Q_DECLARE_METATYPE(quadrille::app::CaseloadEntryPointer)
