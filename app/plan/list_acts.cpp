// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/list_acts.h"

#include <QAction>
#include <QKeyEvent>
#include <QListWidget>
#include <QMenu>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

ListActs::ListActs(QListWidget& list)
    : QObject(&list)
    , m_list(list)
    , m_menu(new QMenu(&list))
{
    list.setContextMenuPolicy(Qt::CustomContextMenu);
    list.installEventFilter(this);
    connect(m_menu, &QMenu::aboutToShow, this, &ListActs::refresh);
    connect(&list, &QListWidget::customContextMenuRequested, this, [this](const QPoint& place) {
        // Asked for by key it opens at the chosen row, wherever the pointer is.
        const QListWidgetItem* row = m_list.itemAt(place);
        const QRect chosen = m_list.visualItemRect(m_list.currentItem());
        m_menu->popup(m_list.viewport()->mapToGlobal(row != nullptr ? place : chosen.bottomLeft()));
    });
}

void ListActs::add(const QString& text, const QKeySequence& keys,
                   std::function<void(std::size_t)> run, std::function<bool(std::size_t)> canRun)
{
    QAction* action = m_menu->addAction(text);
    // Shown in the menu only; eventFilter() hears the key.
    action->setShortcut(keys);
    action->setShortcutContext(Qt::WidgetShortcut);
    action->setShortcutVisibleInContextMenu(true);
    m_acts.push_back({action, std::move(run), std::move(canRun)});
    const std::size_t index = m_acts.size() - 1;
    connect(action, &QAction::triggered, this, [this, index] { this->run(m_acts[index]); });
}

void ListActs::addSeparator()
{
    m_menu->addSeparator();
}

bool ListActs::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::ShortcutOverride && event->type() != QEvent::KeyPress) {
        return QObject::eventFilter(watched, event);
    }
    const auto* key = static_cast<QKeyEvent*>(event);
    const ListAct* act = actOf(QKeySequence(key->keyCombination()));
    if (act == nullptr) {
        return QObject::eventFilter(watched, event);
    }
    if (event->type() == QEvent::ShortcutOverride) {
        event->accept();
    } else {
        run(*act);
    }
    return true;
}

const ListActs::ListAct* ListActs::actOf(const QKeySequence& keys) const
{
    const auto found = std::ranges::find_if(m_acts, [&](const ListAct& act) {
        return !keys.isEmpty() && act.action->shortcut() == keys;
    });
    return found != m_acts.end() ? &*found : nullptr;
}

bool ListActs::canRun(const ListAct& act) const
{
    const int row = m_list.currentRow();
    return row >= 0 && act.canRun(static_cast<std::size_t>(row));
}

void ListActs::run(const ListAct& act)
{
    if (canRun(act)) {
        act.run(static_cast<std::size_t>(m_list.currentRow()));
    }
}

void ListActs::refresh()
{
    for (const ListAct& act : m_acts) {
        act.action->setEnabled(canRun(act));
    }
}

} // namespace quadrille::app
