// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/elided_label.h"

#include <QPainter>
#include <QStyle>

namespace quadrille::app
{

void ElidedLabel::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    const QString shown = fontMetrics().elidedText(text(), Qt::ElideRight, contentsRect().width());
    const Qt::Alignment place = QStyle::visualAlignment(layoutDirection(), alignment());
    style()->drawItemText(&painter, contentsRect(), static_cast<int>(place), palette(), isEnabled(),
                          shown, foregroundRole());
}

} // namespace quadrille::app
