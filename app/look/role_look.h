// SPDX-License-Identifier: GPL-3.0-or-later
// What each role looks like: text, ground and lines.
#pragma once

#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QRect>

#include <optional>

class QPainter;

namespace quadrille::app
{

/// Size and weight of a role's text; nothing where it is the usual one.
std::optional<TextStyle> textStyleOf(Role role);
/// Colour of a role's text; nothing where it is ink.
std::optional<QColor> textColourOf(Role role, const Tokens& tokens);
/// Ground of a panel; nothing for roles that are none.
std::optional<QColor> groundOf(Role role, const Tokens& tokens);
/// Ground and lines of a panel; nothing for roles that are none.
void drawPanel(Role role, const QRect& rect, QPainter& painter, const Tokens& tokens);

} // namespace quadrille::app
