// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/field.h"

#include <QWidget>

#include <vector>

class QLineEdit;
class QListWidget;

namespace quadrille::app
{

/// The order in which a unit asks for its settings: drag a line, or move it with Alt Up and Alt
/// Down.
class OrderList : public QWidget
{
    Q_OBJECT

public:
    explicit OrderList(QWidget* parent);

    /// Shows these settings in this order.
    void setOrder(const std::vector<Field>& order);
    std::vector<Field> order() const;
    /// The order as text of an unseen field, so that an unfinished form can be kept and restored.
    void readKept();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void move(int by);
    void writeKept();

    QListWidget* m_list;
    QLineEdit* m_kept;
};

} // namespace quadrille::app
