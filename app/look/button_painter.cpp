// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/button_painter.h"

#include "app/look/roles.h"
#include "app/look/shapes.h"

#include <QPainter>
#include <QStyleOption>

namespace quadrille::app::buttons
{

namespace
{

/// Colours of one button in one state.
struct Colours {
    QColor fill;
    QColor border;
    QColor text;
};

bool has(const QStyleOption& option, QStyle::StateFlag flag)
{
    return option.state.testFlag(flag);
}

Colours coloursOf(const QStyleOption& option, Role role, const Tokens& tokens)
{
    const bool enabled = has(option, QStyle::State_Enabled);
    const bool pressed = has(option, QStyle::State_Sunken);
    const bool on = has(option, QStyle::State_On);
    const bool hover = has(option, QStyle::State_MouseOver);
    switch (role) {
    case Role::linkButton:
        return {enabled && (pressed || hover) ? tokens.tint : QColor(), QColor(),
                enabled ? tokens.mark : tokens.ink3};
    case Role::segmentButton:
        if (on) {
            return {enabled ? tokens.mark : tokens.ink3, QColor(), tokens.onMark};
        }
        return {enabled && (pressed || hover) ? tokens.tint : QColor(), QColor(),
                enabled ? tokens.ink : tokens.ink3};
    case Role::primaryButton:
        if (enabled) {
            return {pressed ? tokens.ink2 : tokens.mark, pressed ? tokens.ink2 : tokens.mark,
                    tokens.onMark};
        }
        return {tokens.band, tokens.line, tokens.ink3};
    default:
        if (!enabled) {
            return {tokens.band, tokens.line, tokens.ink3};
        }
        return {pressed || on || hover ? tokens.tint : tokens.sheet, tokens.edge, tokens.ink};
    }
}

} // namespace

void drawBevel(const QStyleOptionButton& option, QPainter& painter, const Tokens& tokens,
               const QWidget* widget)
{
    const Role role = roleOf(widget);
    const Colours colours = coloursOf(option, role, tokens);
    const bool focused =
        has(option, QStyle::State_HasFocus) && has(option, QStyle::State_KeyboardFocusChange);
    const int radius = role == Role::segmentButton ? 0 : stroke::cornerRadius;
    const bool filledWithMark = colours.fill == tokens.mark;
    if (!focused) {
        drawBox(painter, option.rect, colours.fill, colours.border, stroke::line, radius);
        return;
    }
    if (filledWithMark) {
        // The ring stands 1 px off the fill, or mark on mark would not be seen.
        drawBox(painter, option.rect, tokens.sheet, tokens.mark, stroke::focus, radius);
        const int in = stroke::focus + stroke::focusGap;
        painter.fillRect(option.rect.adjusted(in, in, -in, -in), colours.fill);
        return;
    }
    drawBox(painter, option.rect, colours.fill, tokens.mark, stroke::focus, radius);
}

void drawLabel(const QStyleOptionButton& option, QPainter& painter, const Tokens& tokens,
               const QWidget* widget)
{
    QRect rect = option.rect;
    const Colours colours = coloursOf(option, roleOf(widget), tokens);
    if (option.features.testFlag(QStyleOptionButton::HasMenu)) {
        const int width = space::wide;
        const bool rightToLeft = option.direction == Qt::RightToLeft;
        const QPointF centre(rightToLeft ? rect.left() + width / 2.0 : rect.right() - width / 2.0,
                             rect.center().y() + 1.0);
        drawArrow(painter, centre, Direction::down, 8, colours.text);
        rect.adjust(rightToLeft ? width / 2 : 0, 0, rightToLeft ? 0 : -width / 2, 0);
    }
    if (!option.icon.isNull() && option.text.isEmpty()) {
        option.icon.paint(&painter, rect);
        return;
    }
    painter.save();
    if (roleOf(widget) == Role::segmentButton && has(option, QStyle::State_On)) {
        QFont bold = painter.font();
        bold.setBold(true);
        painter.setFont(bold);
    }
    painter.setPen(colours.text);
    painter.drawText(rect, Qt::AlignCenter | Qt::TextShowMnemonic | Qt::TextSingleLine,
                     option.text);
    painter.restore();
}

void drawToolButton(const QStyleOptionToolButton& option, QPainter& painter, const Tokens& tokens)
{
    const bool enabled = has(option, QStyle::State_Enabled);
    const bool active = has(option, QStyle::State_Sunken) || has(option, QStyle::State_On) ||
                        has(option, QStyle::State_MouseOver);
    const bool focused =
        has(option, QStyle::State_HasFocus) && has(option, QStyle::State_KeyboardFocusChange);
    drawBox(painter, option.rect, enabled && active ? tokens.tint : QColor(),
            focused ? tokens.mark : QColor(), stroke::focus, stroke::cornerRadius);
    const QColor ink = enabled ? tokens.ink : tokens.ink3;
    if (option.features.testFlag(QStyleOptionToolButton::Arrow)) {
        constexpr std::pair<Qt::ArrowType, Direction> directions[] = {
            {Qt::UpArrow, Direction::up},
            {Qt::DownArrow, Direction::down},
            {Qt::LeftArrow, Direction::left},
            {Qt::RightArrow, Direction::right}};
        for (const auto& [arrow, direction] : directions) {
            if (arrow == option.arrowType) {
                drawChevron(painter, QRectF(option.rect).center(), direction, 8, tokens.mark);
            }
        }
        return;
    }
    if (!option.icon.isNull() && option.toolButtonStyle != Qt::ToolButtonTextOnly) {
        option.icon.paint(&painter, option.rect.adjusted(4, 4, -4, -4), Qt::AlignCenter,
                          enabled ? QIcon::Normal : QIcon::Disabled);
        return;
    }
    painter.save();
    painter.setPen(ink);
    painter.setFont(option.font);
    painter.drawText(option.rect, Qt::AlignCenter | Qt::TextShowMnemonic | Qt::TextSingleLine,
                     option.text);
    painter.restore();
}

void drawCheckIndicator(const QStyleOption& option, QPainter& painter, const Tokens& tokens)
{
    const bool enabled = has(option, QStyle::State_Enabled);
    const bool on = has(option, QStyle::State_On);
    const bool partly = has(option, QStyle::State_NoChange);
    const QColor fill = enabled ? (on ? tokens.mark : tokens.sheet) : tokens.band;
    const QColor border = enabled ? (on || partly ? tokens.mark : tokens.edge) : tokens.line;
    drawBox(painter, option.rect, fill, border, stroke::line, stroke::cornerRadius);
    if (on) {
        drawTick(painter, option.rect, enabled ? tokens.onMark : tokens.ink3);
    } else if (partly) {
        // Half known: filled from below, as a partly done day is.
        painter.fillRect(option.rect.adjusted(3, option.rect.height() / 2, -3, -3), tokens.mark);
    }
}

void drawRadioIndicator(const QStyleOption& option, QPainter& painter, const Tokens& tokens)
{
    const bool enabled = has(option, QStyle::State_Enabled);
    const bool on = has(option, QStyle::State_On);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF circle = QRectF(option.rect).adjusted(0.5, 0.5, -0.5, -0.5);
    painter.setPen(QPen(enabled ? (on ? tokens.mark : tokens.edge) : tokens.line, stroke::line));
    painter.setBrush(enabled ? tokens.sheet : tokens.band);
    painter.drawEllipse(circle);
    if (on) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(enabled ? tokens.mark : tokens.ink3);
        painter.drawEllipse(circle.center(), circle.width() * 0.28, circle.width() * 0.28);
    }
    painter.restore();
}

} // namespace quadrille::app::buttons
