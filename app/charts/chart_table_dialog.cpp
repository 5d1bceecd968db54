// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/chart_table_dialog.h"

#include "app/look/roles.h"
#include "app/look/row_table.h"
#include "app/look/tokens.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QTableWidget>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

constexpr QSize firstSize{480, 420};

} // namespace

ChartTableDialog::ChartTableDialog(const ChartSpec& spec, QWidget* parent)
    : QDialog(parent)
{
    setWindowTitle(tr("Chart as table"));
    auto* title = new QLabel(spec.title, this);
    setRole(*title, Role::strongText);
    title->setWordWrap(true);
    auto* note = new QLabel(spec.note, this);
    setRole(*note, Role::secondLineText);
    note->setWordWrap(true);
    note->setVisible(!spec.note.isEmpty());
    auto* table = new QTableWidget(static_cast<int>(spec.table.rows.size()),
                                   static_cast<int>(spec.table.columns.size()), this);
    table->setObjectName(QStringLiteral("chartTable"));
    table->setAccessibleName(spec.title);
    dressAsRows(*table);
    table->setHorizontalHeaderLabels(spec.table.columns);
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    for (std::size_t row = 0; row < spec.table.rows.size(); ++row) {
        const QStringList& cells = spec.table.rows[row].cells;
        for (qsizetype column = 0; column < cells.size(); ++column) {
            auto* item = new QTableWidgetItem(cells[column]);
            item->setTextAlignment(Qt::AlignLeft | Qt::AlignVCenter);
            table->setItem(static_cast<int>(row), static_cast<int>(column), item);
        }
    }
    if (table->rowCount() > 0) {
        table->setCurrentCell(0, 0);
    }
    auto* buttons = new QDialogButtonBox(this);
    buttons->addButton(tr("&Close"), QDialogButtonBox::RejectRole);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(space::close);
    layout->addWidget(title);
    layout->addWidget(note);
    layout->addWidget(table, 1);
    layout->addWidget(buttons);
    resize(firstSize);
}

} // namespace quadrille::app
