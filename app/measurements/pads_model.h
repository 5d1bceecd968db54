// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/electrode_set.h"

#include <QAbstractTableModel>

#include <vector>

namespace quadrille::app
{

/// The sets of pads of a course, those in use first, then the latest first.
class PadsModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    PadsModel(const QuantityText& text, QObject* parent);

    enum Column {
        forColumn,
        padsColumn,
        issuedColumn,
        usesColumn,
        lifeColumn,
        stateColumn,
        columnsInAll
    };

    void setSets(const std::vector<ElectrodeSet>& sets, const std::vector<DiaryEntry>& diary,
                 Date today);
    const ElectrodeSet& setAt(int row) const;
    const ElectrodeWear& wearAt(int row) const;
    /// Sets that a new one may take the place of.
    std::vector<ElectrodeSet> setsInUse() const;
    bool replacementDue() const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Row {
        ElectrodeSet set;
        ElectrodeWear wear;
    };
    QString textOf(const Row& row, int column) const;

    const QuantityText& m_text;
    std::vector<Row> m_rows;
};

} // namespace quadrille::app
