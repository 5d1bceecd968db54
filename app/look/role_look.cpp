// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/role_look.h"

#include "app/look/shapes.h"

#include <QPainter>

namespace quadrille::app
{

std::optional<TextStyle> textStyleOf(Role role)
{
    switch (role) {
    case Role::titleText:
        return TextStyle::title;
    case Role::bigFigureText:
        return TextStyle::bigFigure;
    case Role::sheetTitleText:
        return TextStyle::sheetTitle;
    case Role::listNameText:
        return TextStyle::listName;
    case Role::strongText:
    case Role::warnStrongText:
    case Role::primaryButton:
        return TextStyle::strong;
    case Role::secondLineText:
    case Role::captionText:
        return TextStyle::secondLine;
    case Role::axisText:
        return TextStyle::axis;
    default:
        return std::nullopt;
    }
}

std::optional<QColor> textColourOf(Role role, const Tokens& tokens)
{
    switch (role) {
    case Role::secondLineText:
        return tokens.ink2;
    case Role::captionText:
    case Role::axisText:
        return tokens.ink3;
    case Role::warnText:
    case Role::warnStrongText:
    case Role::warningStrip:
        return tokens.warnInk;
    case Role::goodText:
        return tokens.good;
    default:
        return std::nullopt;
    }
}

std::optional<QColor> groundOf(Role role, const Tokens& tokens)
{
    switch (role) {
    case Role::sheet:
    case Role::sheetHead:
        return tokens.sheet;
    case Role::band:
        return tokens.band;
    case Role::warningStrip:
        return tokens.warnBand;
    case Role::changedRow:
        return tokens.changed;
    case Role::sideColumn:
    case Role::pageHead:
        return tokens.desk;
    default:
        return std::nullopt;
    }
}

void drawPanel(Role role, const QRect& rect, QPainter& painter, const Tokens& tokens)
{
    const auto ground = groundOf(role, tokens);
    if (!ground) {
        return;
    }
    painter.fillRect(rect, *ground);
    const QRect bottom(rect.left(), rect.bottom(), rect.width(), stroke::line);
    switch (role) {
    case Role::sheet:
        drawBox(painter, rect, QColor(), tokens.line, stroke::line, 0);
        break;
    case Role::sheetHead:
    case Role::band:
    case Role::pageHead:
        painter.fillRect(bottom, tokens.line);
        break;
    case Role::warningStrip:
        painter.fillRect(bottom, tokens.warnLine);
        break;
    case Role::changedRow:
        painter.fillRect(QRect(rect.left(), rect.top(), stroke::changedBar, rect.height()),
                         tokens.mark);
        break;
    case Role::sideColumn:
        painter.fillRect(QRect(rect.left(), rect.top(), stroke::line, rect.height()), tokens.line);
        break;
    default:
        break;
    }
}

} // namespace quadrille::app
