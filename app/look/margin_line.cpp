// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/margin_line.h"

#include "app/look/look.h"

#include <QEvent>
#include <QPainter>

namespace quadrille::app
{

MarginLine::MarginLine(QWidget* parent)
    : QWidget(parent)
{
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setFocusPolicy(Qt::NoFocus);
    parent->installEventFilter(this);
    stand();
}

bool MarginLine::eventFilter(QObject* watched, QEvent* event)
{
    switch (event->type()) {
    case QEvent::Resize:
    case QEvent::Show:
    case QEvent::LayoutRequest:
    case QEvent::StyleChange:
        stand();
        break;
    default:
        break;
    }
    return QWidget::eventFilter(watched, event);
}

void MarginLine::stand()
{
    const int x = scaled(size::marginColumn, appliedFactor());
    setGeometry(x, 0, stroke::line, parentWidget()->height());
    raise();
}

void MarginLine::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.fillRect(rect(), tokensOf(palette()).margin);
}

} // namespace quadrille::app
