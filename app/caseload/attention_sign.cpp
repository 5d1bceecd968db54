// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/attention_sign.h"

#include "app/look/shapes.h"
#include "app/look/tokens.h"

#include <QPainter>

namespace quadrille::app
{

namespace
{

void dashedSquare(QPainter& painter, const QRect& box, const QColor& ink)
{
    painter.save();
    QPen pen(ink, 1.5);
    pen.setDashPattern({3 / 1.5, 2 / 1.5});
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(pen);
    painter.drawRect(QRectF(box).adjusted(1, 1, -1, -1));
    painter.restore();
}

/// Two weeks gone, then the running one taller, or the line after the last.
void lastWeeks(QPainter& painter, const QRect& box, bool over, const QColor& ink)
{
    const int unit = box.width() / 4;
    const int middle = box.top() + box.height() / 2;
    for (const int step : {0, 1}) {
        painter.fillRect(QRect(box.left() + step * (unit + 1), middle - unit / 2, unit, unit), ink);
    }
    const int x = box.left() + 2 * (unit + 1);
    if (over) {
        painter.fillRect(QRect(x, middle - unit / 2, unit, unit), ink);
        painter.fillRect(QRect(box.right() - 1, box.top() + 2, 2, box.height() - 4), ink);
    } else {
        painter.fillRect(QRect(x, middle - unit, unit, 2 * unit), ink);
        painter.fillRect(QRect(box.right(), box.top() + 2, 1, box.height() - 4), ink);
    }
}

} // namespace

void paintAttentionSign(QPainter& painter, const QRect& box, AttentionReason reason,
                        const QColor& ink)
{
    switch (reason) {
    case AttentionReason::screeningNotSigned:
    case AttentionReason::screeningTooOld:
    case AttentionReason::noPlan:
        drawWarningTriangle(painter, box, ink);
        break;
    case AttentionReason::draftNotIssued:
        dashedSquare(painter, box, ink);
        break;
    case AttentionReason::planOver:
        lastWeeks(painter, box, true, ink);
        break;
    case AttentionReason::lastWeek:
        lastWeeks(painter, box, false, ink);
        break;
    }
}

} // namespace quadrille::app
