// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QRectF>

class QPainter;

namespace quadrille::app
{

class HandoutDocument;

/// Draws page `page` (from 0) with head and foot into `target`, which has the shape of the paper.
/// Preview, printer and file all draw by this one function. The paper itself is left as it is.
void paintPage(QPainter& painter, const HandoutDocument& document, int page, const QRectF& target);

} // namespace quadrille::app
