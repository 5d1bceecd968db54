// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/bar_painter.h"

#include "app/look/shapes.h"

#include <QPainter>
#include <QStyleOption>

#include <algorithm>

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

void drawProgress(const QStyleOptionProgressBar& option, QPainter& painter, const Tokens& tokens)
{
    const QRect room = option.rect.adjusted(1, 1, -1, -1);
    const auto range = static_cast<qint64>(option.maximum) - option.minimum;
    if (range <= 0) {
        return;
    }
    const auto gone = static_cast<qint64>(option.progress) - option.minimum;
    const int width = static_cast<int>(room.width() * std::clamp<qint64>(gone, 0, range) / range);
    const QRect bar(room.left(), room.top(), width, room.height());
    painter.fillRect(QStyle::visualRect(option.direction, room, bar), tokens.tint);
    painter.fillRect(QStyle::visualRect(option.direction, room,
                                        QRect(bar.left(), bar.bottom() - 2, bar.width(), 3)),
                     tokens.mark);
}

} // namespace quadrille::app::bars
