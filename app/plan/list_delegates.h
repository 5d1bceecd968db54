// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStyledItemDelegate>

namespace quadrille::app
{

/// Draws one row of the short lists of the Plan page: a bold head with a word at its right, smaller
/// lines below, a rule between rows. The item's text is what a voice reads; the parts come in roles
/// of their own.
class ShortRowDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    enum Part { headRole = Qt::UserRole + 1, besideRole, linesRole };

    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

} // namespace quadrille::app
