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
    style()->drawItemText(&painter, contentsRect(),
                          QStyle::visualAlignment(layoutDirection(), alignment()), palette(),
                          isEnabled(), shown, foregroundRole());
}

} // namespace quadrille::app
