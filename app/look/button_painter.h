// SPDX-License-Identifier: GPL-3.0-or-later
// How push buttons, tool buttons, check boxes and radio buttons are drawn.
#pragma once

#include "app/look/tokens.h"

class QPainter;
class QStyleOption;
class QStyleOptionButton;
class QStyleOptionToolButton;
class QWidget;

namespace quadrille::app::buttons
{

/// Ground and border of a push button, by its role.
void drawBevel(const QStyleOptionButton& option, QPainter& painter, const Tokens& tokens,
               const QWidget* widget);
void drawLabel(const QStyleOptionButton& option, QPainter& painter, const Tokens& tokens,
               const QWidget* widget);
/// Flat: text or arrow on the ground it stands on.
void drawToolButton(const QStyleOptionToolButton& option, QPainter& painter, const Tokens& tokens);
/// The square of a check box, also in lists and menus.
void drawCheckIndicator(const QStyleOption& option, QPainter& painter, const Tokens& tokens);
void drawRadioIndicator(const QStyleOption& option, QPainter& painter, const Tokens& tokens);

} // namespace quadrille::app::buttons
