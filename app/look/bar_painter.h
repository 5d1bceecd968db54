// SPDX-License-Identifier: GPL-3.0-or-later
// How tabs, heads of tables and scroll bars are drawn.
#pragma once

#include "app/look/tokens.h"

#include <QRect>

class QPainter;
class QStyleOptionHeader;
class QStyleOptionProgressBar;
class QStyleOptionTab;

namespace quadrille::app::bars
{

/// The mark under the chosen tab and the line under all of them.
void drawTabShape(const QStyleOptionTab& option, QPainter& painter, const Tokens& tokens);
void drawTabLabel(const QStyleOptionTab& option, QPainter& painter, const Tokens& tokens);
void drawHeaderSection(const QStyleOptionHeader& option, QPainter& painter, const Tokens& tokens);
/// The track with its handle; no arrows.
void drawScrollBar(const QRect& track, const QRect& handle, bool vertical, bool active,
                   QPainter& painter, const Tokens& tokens);
/// How far something has come, as a flat bar.
void drawProgress(const QStyleOptionProgressBar& option, QPainter& painter, const Tokens& tokens);

} // namespace quadrille::app::bars
