// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/bar_painter.h"

#include "app/look/shapes.h"

#include <QPainter>
#include <QStyleOption>

namespace quadrille::app::bars
{

void drawTabShape(const QStyleOptionTab& option, QPainter& painter, const Tokens& tokens)
{
    const QRect rect = option.rect;
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    const bool enabled = option.state.testFlag(QStyle::State_Enabled);
    if (enabled && !selected && option.state.testFlag(QStyle::State_MouseOver)) {
        painter.fillRect(rect.adjusted(0, 0, 0, -1), tokens.tint);
    }
    const int bottom = rect.bottom() + 1;
    painter.fillRect(QRect(rect.left(), bottom - stroke::line, rect.width(), stroke::line),
                     tokens.line);
    if (selected) {
        const int height = stroke::focus + stroke::line;
        painter.fillRect(QRect(rect.left(), bottom - height, rect.width(), stroke::focus),
                         enabled ? tokens.mark : tokens.edge);
    }
    if (option.state.testFlag(QStyle::State_HasFocus) && selected &&
        option.state.testFlag(QStyle::State_KeyboardFocusChange)) {
        drawFocusRing(painter, rect.adjusted(3, 4, -3, -6), tokens.mark);
    }
}

void drawTabLabel(const QStyleOptionTab& option, QPainter& painter, const Tokens& tokens)
{
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    const bool enabled = option.state.testFlag(QStyle::State_Enabled);
    painter.save();
    QFont font = painter.font();
    font.setBold(selected);
    painter.setFont(font);
    painter.setPen(!enabled ? tokens.ink3 : selected ? tokens.ink : tokens.ink2);
    painter.drawText(option.rect, Qt::AlignCenter | Qt::TextShowMnemonic | Qt::TextSingleLine,
                     option.text);
    painter.restore();
}

void drawHeaderSection(const QStyleOptionHeader& option, QPainter& painter, const Tokens& tokens)
{
    const QRect rect = option.rect;
    painter.fillRect(rect, tokens.band);
    painter.fillRect(QRect(rect.left(), rect.bottom(), rect.width(), stroke::line), tokens.line);
    if (option.orientation == Qt::Vertical) {
        painter.fillRect(QRect(rect.right(), rect.top(), stroke::line, rect.height()), tokens.line);
    }
}

void drawScrollBar(const QRect& track, const QRect& handle, bool vertical, bool active,
                   QPainter& painter, const Tokens& tokens)
{
    painter.fillRect(track, tokens.band);
    const QRect edge = vertical ? QRect(track.left(), track.top(), stroke::line, track.height())
                                : QRect(track.left(), track.top(), track.width(), stroke::line);
    painter.fillRect(edge, tokens.rule);
    const QRect inner = vertical ? handle.adjusted(3, 1, -1, -1) : handle.adjusted(1, 3, -1, -1);
    painter.fillRect(inner, active ? tokens.ink3 : tokens.edge);
}

} // namespace quadrille::app::bars
