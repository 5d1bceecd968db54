// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/order_list.h"

#include "app/look/tokens.h"
#include "app/words/trade_words.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

namespace quadrille::app
{

OrderList::OrderList(QWidget* parent)
    : QWidget(parent)
    , m_list(new QListWidget(this))
    , m_kept(new QLineEdit(this))
{
    m_list->setAccessibleName(tr("Order in which the stimulator asks for its settings"));
    m_list->setToolTip(tr("Alt Up and Alt Down move a line"));
    m_list->setDragDropMode(QAbstractItemView::InternalMove);
    m_list->setMinimumHeight(150);
    m_list->installEventFilter(this);
    m_kept->setObjectName(QStringLiteral("keptOrder"));
    m_kept->hide();
    auto* earlier = new QPushButton(tr("&Earlier"), this);
    auto* later = new QPushButton(tr("&Later"), this);
    earlier->setAutoDefault(false);
    later->setAutoDefault(false);
    connect(earlier, &QPushButton::clicked, this, [this] { move(-1); });
    connect(later, &QPushButton::clicked, this, [this] { move(1); });
    connect(m_list->model(), &QAbstractItemModel::rowsMoved, this, &OrderList::writeKept);

    auto* buttons = new QVBoxLayout;
    buttons->addWidget(earlier);
    buttons->addWidget(later);
    buttons->addStretch();
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::close);
    layout->addWidget(m_list, 1);
    layout->addLayout(buttons);
}

void OrderList::setOrder(const std::vector<Field>& order)
{
    m_list->clear();
    for (const Field field : order) {
        auto* item = new QListWidgetItem(fieldName(field), m_list);
        item->setData(Qt::UserRole, static_cast<int>(field));
    }
    m_list->setCurrentRow(0);
    writeKept();
}

std::vector<Field> OrderList::order() const
{
    std::vector<Field> order;
    order.reserve(static_cast<std::size_t>(m_list->count()));
    for (int row = 0; row < m_list->count(); ++row) {
        order.push_back(static_cast<Field>(m_list->item(row)->data(Qt::UserRole).toInt()));
    }
    return order;
}

void OrderList::readKept()
{
    std::vector<Field> order;
    const QStringList parts = m_kept->text().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    order.reserve(static_cast<std::size_t>(parts.size()));
    for (const QString& part : parts) {
        order.push_back(static_cast<Field>(part.toInt()));
    }
    if (!order.empty()) {
        setOrder(order);
    }
}

bool OrderList::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_list && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool vertical = key->key() == Qt::Key_Up || key->key() == Qt::Key_Down;
        if (vertical && key->modifiers().testFlag(Qt::AltModifier)) {
            move(key->key() == Qt::Key_Up ? -1 : 1);
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void OrderList::move(int by)
{
    const int from = m_list->currentRow();
    const int to = from + by;
    if (from < 0 || to < 0 || to >= m_list->count()) {
        return;
    }
    QListWidgetItem* item = m_list->takeItem(from);
    m_list->insertItem(to, item);
    m_list->setCurrentRow(to);
    writeKept();
}

void OrderList::writeKept()
{
    QStringList parts;
    for (const Field field : order()) {
        parts.append(QString::number(static_cast<int>(field)));
    }
    m_kept->setText(parts.join(QLatin1Char(' ')));
}

} // namespace quadrille::app
