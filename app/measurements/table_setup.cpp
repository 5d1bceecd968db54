// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/table_setup.h"

#include "app/look/look.h"
#include "app/look/row_table.h"
#include "app/look/tokens.h"

#include <QEvent>
#include <QHeaderView>
#include <QTableView>

namespace quadrille::app
{

namespace
{

/// A narrow window breaks lines and cuts nothing.
void fitRows(QTableView& table)
{
    table.resizeRowsToContents();
    const int usual = table.verticalHeader()->defaultSectionSize();
    for (int row = 0; row < table.model()->rowCount(); ++row) {
        if (table.rowHeight(row) > usual) {
            table.setRowHeight(row, table.rowHeight(row) + space::small);
        }
    }
}

/// Follows the width of a table, whatever layout gives it when.
class ColumnShares : public QObject
{
public:
    ColumnShares(QTableView& table, std::span<const int> hundredths)
        : QObject(&table)
        , m_table(table)
        , m_hundredths(hundredths)
    {
        table.viewport()->installEventFilter(this);
    }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() == QEvent::Resize) {
            const int width = m_table.viewport()->width();
            int column = 0;
            for (const int share : m_hundredths) {
                m_table.setColumnWidth(column++, width * share / 100);
            }
            fitRows(m_table);
        }
        return QObject::eventFilter(watched, event);
    }

private:
    QTableView& m_table;
    std::span<const int> m_hundredths;
};

} // namespace

void setUpTable(QTableView& table, QAbstractItemModel& model, std::span<const int> hundredths)
{
    table.setModel(&model);
    dressAsRows(table);
    table.setWordWrap(true);
    table.setTextElideMode(Qt::ElideNone);
    table.verticalHeader()->setDefaultSectionSize(scaled(size::smallButton, appliedFactor()));
    table.horizontalHeader()->setMinimumSectionSize(size::hitArea);
    new ColumnShares(table, hundredths);
    QObject::connect(&model, &QAbstractItemModel::modelReset, &table, [&table] { fitRows(table); });
}

} // namespace quadrille::app
