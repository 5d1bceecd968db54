// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/list_delegates.h"

#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QFontMetrics>
#include <QPainter>

namespace quadrille::app
{

void ShortRowDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                             const QModelIndex& index) const
{
    const Tokens tokens = tokensOf(option.palette);
    const double factor = appliedFactor();
    const QFont head = fontOf(TextStyle::strong, factor);
    const QFont small = fontOf(TextStyle::secondLine, factor);
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    painter->save();
    painter->fillRect(option.rect, chosen ? tokens.tint : tokens.sheet);
    painter->fillRect(QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), 1),
                      tokens.rule);
    QRect area = option.rect.adjusted(space::insideSheet - 2, space::close, -space::betweenSheets,
                                      -space::close);

    const QString beside = index.data(besideRole).toString();
    painter->setFont(small);
    painter->setPen(tokens.ink2);
    const int headLine = QFontMetrics(head).lineSpacing();
    painter->drawText(QRect(area.left(), area.top(), area.width(), headLine),
                      Qt::AlignRight | Qt::AlignVCenter, beside);
    const int besideWidth = QFontMetrics(small).horizontalAdvance(beside) + space::close;
    painter->setFont(head);
    painter->setPen(tokens.ink);
    painter->drawText(QRect(area.left(), area.top(), area.width() - besideWidth, headLine),
                      Qt::AlignLeft | Qt::AlignVCenter,
                      QFontMetrics(head).elidedText(index.data(headRole).toString(), Qt::ElideRight,
                                                    area.width() - besideWidth));
    painter->setFont(small);
    painter->setPen(tokens.ink2);
    int top = area.top() + headLine + 1;
    const QStringList lines = index.data(linesRole).toStringList();
    for (const QString& line : lines) {
        const int height = QFontMetrics(small).lineSpacing();
        painter->drawText(QRect(area.left(), top, area.width(), height),
                          Qt::AlignLeft | Qt::AlignVCenter,
                          QFontMetrics(small).elidedText(line, Qt::ElideRight, area.width()));
        top += height;
    }
    if (option.state.testFlag(QStyle::State_HasFocus)) {
        painter->setPen(QPen(tokens.mark, stroke::focus));
        painter->drawRect(option.rect.adjusted(1, 1, -1, -2));
    }
    painter->restore();
}

QSize ShortRowDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    Q_UNUSED(option)
    const double factor = appliedFactor();
    const auto lines = static_cast<int>(index.data(linesRole).toStringList().size());
    return {100, 2 * space::close + QFontMetrics(fontOf(TextStyle::strong, factor)).lineSpacing() +
                     1 + lines * QFontMetrics(fontOf(TextStyle::secondLine, factor)).lineSpacing()};
}

} // namespace quadrille::app
