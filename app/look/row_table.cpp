// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/row_table.h"

#include <QAbstractItemModel>
#include <QCoreApplication>
#include <QHeaderView>
#include <QModelIndex>
#include <QTableView>

namespace quadrille::app
{

namespace
{

struct RowTableWords {
    Q_DECLARE_TR_FUNCTIONS(RowTableWords)
};

} // namespace

void dressAsRows(QTableView& table)
{
    table.setEditTriggers(QAbstractItemView::NoEditTriggers);
    table.setSelectionBehavior(QAbstractItemView::SelectRows);
    table.setSelectionMode(QAbstractItemView::SingleSelection);
    table.setTabKeyNavigation(false);
    table.setShowGrid(false);
    table.setFrameShape(QFrame::NoFrame);
    table.setWordWrap(false);
    table.verticalHeader()->hide();
    table.horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    table.horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table.horizontalHeader()->setHighlightSections(false);
}

QString spokenCell(const QModelIndex& cell, const QString& text)
{
    if (text.isEmpty()) {
        return {};
    }
    const QString head =
        cell.model()->headerData(cell.column(), Qt::Horizontal, Qt::DisplayRole).toString();
    return RowTableWords::tr("%1: %2", "column, value").arg(head, text);
}

} // namespace quadrille::app
