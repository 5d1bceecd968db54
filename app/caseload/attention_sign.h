// SPDX-License-Identifier: GPL-3.0-or-later
// What someone would write in the margin beside a row.
#pragma once

#include "app/caseload/attention.h"

#include <QColor>
#include <QRect>

class QPainter;

namespace quadrille::app
{

/// Draws the sign of a reason into a square in the colour of the text, so that it stays visible
/// with any palette: a triangle where nothing is in force, a dashed square for a draft, the weeks'
/// squares running out for a plan that ends or has ended.
void paintAttentionSign(QPainter& painter, const QRect& box, AttentionReason reason,
                        const QColor& ink);

} // namespace quadrille::app
