// SPDX-License-Identifier: GPL-3.0-or-later
// The rows of the caseload for the table: heads of groups and patients.
#pragma once

#include "app/caseload/caseload_order.h"

#include <QAbstractTableModel>

#include <memory>

namespace quadrille::app
{

/// Columns of the table; the first is the margin with its signs.
enum class CaseloadColumn { margin, name, course, week, grid, plan, attention };
inline constexpr int caseloadColumns = 7;

/// Holds the entries of a practice and the arrangement that is shown. A row is the head of a group
/// or a patient. Texts are made when the entries arrive; data() only hands them out.
class CaseloadModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Role {
        EntryRole = Qt::UserRole, ///< CaseloadEntryPointer; nothing for the head of a group
    };

    explicit CaseloadModel(const QuantityText& text, QObject* parent = nullptr);

    void setRows(const std::vector<db::CaseloadRow>& rows, Date today);
    void setWish(const CaseloadWish& wish);
    const CaseloadWish& wish() const { return m_wish; }

    /// All entries, whatever is shown.
    const std::vector<CaseloadEntry>& entries() const { return *m_entries; }
    const CaseloadArrangement& arrangement() const { return m_arrangement; }
    bool isGroupHead(int row) const;
    /// The patient of a row; nothing for the head of a group.
    const CaseloadEntry* entryAt(int row) const;
    /// The row that shows a patient now.
    std::optional<int> rowOf(PatientId patient) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation,
                        int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    /// Either the head of a group or an entry.
    struct Line {
        CaseloadGroup group = CaseloadGroup::needsAttention;
        std::optional<std::size_t> entry = std::nullopt;
    };
    void rearrange();
    QString headText(CaseloadGroup group) const;
    QVariant cellText(const CaseloadEntry& entry, CaseloadColumn column) const;

    QuantityText m_text;
    /// Shared with the variants that data() hands out, which may outlive a change of rows.
    std::shared_ptr<const std::vector<CaseloadEntry>> m_entries;
    CaseloadWish m_wish;
    CaseloadArrangement m_arrangement;
    std::vector<Line> m_lines;
};

using CaseloadEntryPointer = std::shared_ptr<const CaseloadEntry>;

} // namespace quadrille::app

Q_DECLARE_METATYPE(quadrille::app::CaseloadEntryPointer)
