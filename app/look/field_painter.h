// SPDX-License-Identifier: GPL-3.0-or-later
// How line edits, spin boxes, date fields and combos are laid out and drawn. Borders of 1 and 2 px
// share the same content rectangle, so nothing shifts when the focus comes.
#pragma once

#include "app/look/tokens.h"

#include <QStyle>

class QPainter;
class QStyleOptionComboBox;
class QStyleOptionFrame;
class QStyleOptionSpinBox;
class QWidget;

namespace quadrille::app::fields
{

/// Space between the border of a field and what stands in it, border included; px at 100 %.
inline constexpr int padding = 8;
/// Width of the column with the arrows of a spin box or combo; px at 100 %.
inline constexpr int arrowColumn = 19;

/// Ground and border of any field: edge, 2 px mark with the focus, 2 px warnLine outside its range.
void drawFrame(const QRect& rect, bool enabled, bool focused, QPainter& painter,
               const Tokens& tokens, const QWidget* widget);

void drawSpinBox(const QStyleOptionSpinBox& option, QPainter& painter, const Tokens& tokens,
                 double factor, const QWidget* widget);
QRect spinBoxPart(const QStyleOptionSpinBox& option, QStyle::SubControl part, double factor);

void drawComboBox(const QStyleOptionComboBox& option, QPainter& painter, const Tokens& tokens,
                  double factor, const QWidget* widget);
void drawComboBoxLabel(const QStyleOptionComboBox& option, QPainter& painter, const Tokens& tokens,
                       double factor);
QRect comboBoxPart(const QStyleOptionComboBox& option, QStyle::SubControl part, double factor);

} // namespace quadrille::app::fields
