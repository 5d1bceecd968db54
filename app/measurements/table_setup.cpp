// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/table_setup.h"

#include <QHeaderView>
#include <QTableView>

namespace quadrille::app
{

void setUpTable(QTableView& table, QAbstractItemModel& model)
{
    table.setModel(&model);
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

void shareWidth(QTableView& table, std::span<const int> hundredths)
{
    const int width = table.viewport()->width();
    int column = 0;
    for (const int share : hundredths) {
        table.setColumnWidth(column++, width * share / 100);
    }
}

} // namespace quadrille::app
