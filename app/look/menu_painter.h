// SPDX-License-Identifier: GPL-3.0-or-later
// How the menu bar and menus are drawn.
#pragma once

#include "app/look/tokens.h"

#include <QSize>

class QPainter;
class QStyleOptionMenuItem;

namespace quadrille::app::menus
{

void drawBarItem(const QStyleOptionMenuItem& option, QPainter& painter, const Tokens& tokens);
void drawItem(const QStyleOptionMenuItem& option, QPainter& painter, const Tokens& tokens,
              double factor);
QSize itemSize(const QStyleOptionMenuItem& option, double factor);

} // namespace quadrille::app::menus
