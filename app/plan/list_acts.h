// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QKeySequence>
#include <QObject>
#include <QString>

#include <functional>
#include <vector>

class QAction;
class QListWidget;
class QMenu;

namespace quadrille::app
{

/// What can be done with the chosen row of a short list: in a menu, which a button or the context
/// menu opens, and by keys while the list has the focus. Its keys go before those of the window.
class ListActs : public QObject
{
    Q_OBJECT

public:
    /// Belongs to the list.
    explicit ListActs(QListWidget& list);

    /// `run` and `canRun` are given the chosen row; without one nothing runs.
    void add(const QString& text, const QKeySequence& keys, std::function<void(std::size_t)> run,
             std::function<bool(std::size_t)> canRun);
    void addSeparator();
    QMenu* menu() { return m_menu; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct ListAct {
        QAction* action;
        std::function<void(std::size_t)> run;
        std::function<bool(std::size_t)> canRun;
    };
    const ListAct* actOf(const QKeySequence& keys) const;
    bool canRun(const ListAct& act) const;
    void run(const ListAct& act);
    void refresh();

    QListWidget& m_list;
    QMenu* m_menu;
    std::vector<ListAct> m_acts;
};

} // namespace quadrille::app
