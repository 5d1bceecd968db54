// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/record_list.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

RecordList::RecordList(const QString& title, const QString& emptySentence, Acts acts,
                       QWidget* parent)
    : QDialog(parent)
    , m_acts(std::move(acts))
    , m_emptySentence(emptySentence)
    , m_list(new QListWidget(this))
    , m_change(new QPushButton(tr("&Change…"), this))
{
    setWindowTitle(title);
    resize(560, 380);
    m_list->setAccessibleName(title);
    m_list->setObjectName(QStringLiteral("records"));
    auto* add = new QPushButton(tr("&New…"), this);
    setRole(*add, Role::primaryButton);
    add->setObjectName(QStringLiteral("newRecord"));
    add->setAutoDefault(false);
    m_change->setAutoDefault(false);
    auto* close = new QPushButton(tr("Close"), this);
    close->setAutoDefault(false);

    auto* buttons = new QHBoxLayout;
    buttons->addWidget(add);
    buttons->addWidget(m_change);
    buttons->addStretch();
    buttons->addWidget(close);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::wide, space::wide, space::wide, space::insideSheet);
    layout->setSpacing(space::insideSheet);
    layout->addWidget(m_list, 1);
    layout->addLayout(buttons);

    connect(close, &QPushButton::clicked, this, &QDialog::accept);
    connect(add, &QPushButton::clicked, this, [this] {
        m_acts.add(this);
        refresh();
    });
    connect(m_change, &QPushButton::clicked, this, &RecordList::changeCurrent);
    connect(m_list, &QListWidget::itemActivated, this, &RecordList::changeCurrent);
    refresh();
}

void RecordList::refresh()
{
    const int current = m_list->currentRow();
    m_list->clear();
    const std::vector<Row> rows = m_acts.rows();
    for (const Row& row : rows) {
        m_list->addItem(row.second.isEmpty() ? row.name : tr("%1 · %2").arg(row.name, row.second));
    }
    m_change->setEnabled(!rows.empty());
    if (rows.empty()) {
        auto* item = new QListWidgetItem(m_emptySentence, m_list);
        item->setFlags(Qt::NoItemFlags);
        return;
    }
    m_list->setCurrentRow(std::clamp(current, 0, m_list->count() - 1));
}

void RecordList::changeCurrent()
{
    if (m_change->isEnabled() && m_list->currentRow() >= 0) {
        m_acts.change(this, static_cast<std::size_t>(m_list->currentRow()));
        refresh();
    }
}

} // namespace quadrille::app
