// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/icon_painter.h"

#include "app/look/shapes.h"

#include <QPainter>
#include <QPixmap>

#include <functional>

namespace quadrille::app
{

namespace
{

constexpr int largestSide = 64;

/// Drawn at the sizes that Qt asks for, so that nothing is blurred by scaling.
QIcon drawn(const std::function<void(QPainter&, const QRectF&)>& draw)
{
    QIcon icon;
    for (int side = 16; side <= largestSide; side += 16) {
        QPixmap pixmap(side, side);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        draw(painter, QRectF(0, 0, side, side));
        icon.addPixmap(pixmap);
    }
    return icon;
}

QIcon chevron(Direction direction, const QColor& colour)
{
    return drawn([=](QPainter& painter, const QRectF& box) {
        drawChevron(painter, box.center(), direction, box.width() * 0.5, colour);
    });
}

} // namespace

std::optional<QIcon> iconOf(QStyle::StandardPixmap sign, const Tokens& tokens)
{
    switch (sign) {
    case QStyle::SP_ArrowLeft:
        return chevron(Direction::left, tokens.mark);
    case QStyle::SP_ArrowRight:
        return chevron(Direction::right, tokens.mark);
    case QStyle::SP_MessageBoxWarning:
    case QStyle::SP_MessageBoxCritical:
        return drawn([ink = tokens.warnInk](QPainter& painter, const QRectF& box) {
            drawWarningTriangle(painter, box, ink);
        });
    case QStyle::SP_MessageBoxQuestion:
    case QStyle::SP_MessageBoxInformation:
        return QIcon();
    default:
        return std::nullopt;
    }
}

} // namespace quadrille::app
