// SPDX-License-Identifier: GPL-3.0-or-later
// How a row of the caseload is drawn.
#pragma once

#include "app/caseload/caseload_model.h"

#include <QStyledItemDelegate>

namespace quadrille::app
{

struct Tokens;

/// Two lines of text a cell, the weeks as small squares, the miniature of the grid, the sign in
/// the margin. Elided text is whole in the tooltip.
class CaseloadDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    explicit CaseloadDelegate(const QuantityText& text, QObject* parent = nullptr);

    /// Before the text of each cell, px at 100 %.
    static constexpr int cellPadding = 14;
    /// Height of a row at the current text size.
    static int rowHeight(bool groupHead);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    void paintGroupHead(QPainter& painter, const QStyleOptionViewItem& option,
                        const QModelIndex& index, const Tokens& tokens) const;
    void paintCell(QPainter& painter, const QRect& cell, const CaseloadEntry& entry,
                   CaseloadColumn column, const Tokens& tokens, const QColor& ground) const;
    void paintWeeks(QPainter& painter, const QRect& cell, const CaseloadEntry& entry,
                    const Tokens& tokens) const;

    QuantityText m_text;
};

} // namespace quadrille::app
