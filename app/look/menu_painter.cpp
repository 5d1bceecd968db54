// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/menu_painter.h"

#include "app/look/look.h"
#include "app/look/shapes.h"

#include <QPainter>
#include <QStyleOption>

#include <algorithm>

namespace quadrille::app::menus
{

namespace
{

constexpr int checkColumn = 26;
constexpr int endPadding = 20;
constexpr int betweenTextAndKey = 28;
constexpr int separatorHeight = 9;

/// Text and shortcut stand in one string, parted by a tab.
std::pair<QString, QString> textAndKey(const QString& text)
{
    const qsizetype tab = text.indexOf(QLatin1Char('\t'));
    return tab < 0 ? std::pair(text, QString()) : std::pair(text.left(tab), text.mid(tab + 1));
}

} // namespace

void drawBarItem(const QStyleOptionMenuItem& option, QPainter& painter, const Tokens& tokens)
{
    const bool enabled = option.state.testFlag(QStyle::State_Enabled);
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    const QRect ground = option.rect.adjusted(0, 0, 0, -stroke::line);
    painter.fillRect(ground, enabled && selected ? tokens.tint : tokens.desk);
    painter.fillRect(
        QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), stroke::line),
        tokens.line);
    painter.save();
    painter.setPen(enabled ? tokens.ink : tokens.ink3);
    painter.drawText(option.rect, Qt::AlignCenter | Qt::TextShowMnemonic | Qt::TextSingleLine,
                     option.text);
    painter.restore();
}

void drawItem(const QStyleOptionMenuItem& option, QPainter& painter, const Tokens& tokens,
              double factor)
{
    const QRect rect = option.rect;
    painter.fillRect(rect, tokens.sheet);
    if (option.menuItemType == QStyleOptionMenuItem::Separator) {
        painter.fillRect(QRect(rect.left(), rect.center().y(), rect.width(), stroke::line),
                         tokens.rule);
        return;
    }
    const bool enabled = option.state.testFlag(QStyle::State_Enabled);
    if (option.state.testFlag(QStyle::State_Selected)) {
        painter.fillRect(rect, tokens.tint);
    }
    const QColor ink = enabled ? tokens.ink : tokens.ink3;
    const int start = scaled(checkColumn, factor);
    const int end = scaled(endPadding, factor);
    if (option.checked) {
        const int side = scaled(16, factor);
        const QRect column(rect.left(), rect.top(), start, rect.height());
        QRect box(0, 0, side, side);
        box.moveCenter(QStyle::visualRect(option.direction, rect, column).center());
        drawTick(painter, box, ink);
    }
    painter.save();
    painter.setFont(option.font);
    painter.setPen(ink);
    const auto [text, key] = textAndKey(option.text);
    const QRect line = QStyle::visualRect(option.direction, rect, rect.adjusted(start, 0, -end, 0));
    const auto left = QStyle::visualAlignment(option.direction, Qt::AlignLeft);
    const auto right = QStyle::visualAlignment(option.direction, Qt::AlignRight);
    const int flags = Qt::AlignVCenter | Qt::TextShowMnemonic | Qt::TextSingleLine;
    painter.drawText(line, static_cast<int>(left) | flags, text);
    painter.setPen(tokens.ink3);
    painter.drawText(line, static_cast<int>(right) | flags, key);
    painter.restore();
    if (option.menuItemType == QStyleOptionMenuItem::SubMenu) {
        const bool rightToLeft = option.direction == Qt::RightToLeft;
        const double x = rightToLeft ? rect.left() + end / 2.0 : rect.right() - end / 2.0;
        drawArrow(painter, {x, QRectF(rect).center().y()},
                  rightToLeft ? Direction::left : Direction::right, 7 * factor, ink);
    }
}

QSize itemSize(const QStyleOptionMenuItem& option, double factor)
{
    if (option.menuItemType == QStyleOptionMenuItem::Separator) {
        return {scaled(checkColumn, factor), scaled(separatorHeight, factor)};
    }
    const auto [text, key] = textAndKey(option.text);
    const QFontMetrics metrics(option.font);
    int width = scaled(checkColumn, factor) + scaled(endPadding, factor) +
                metrics.size(Qt::TextSingleLine | Qt::TextShowMnemonic, text).width();
    if (!key.isEmpty()) {
        width += scaled(betweenTextAndKey, factor) + metrics.horizontalAdvance(key);
    }
    return {width, std::max(scaled(size::smallButton, factor), metrics.height() + 6)};
}

} // namespace quadrille::app::menus
