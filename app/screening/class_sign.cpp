// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screening/class_sign.h"

#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QPainter>
#include <QPolygonF>

namespace quadrille::app
{

namespace
{

constexpr int side = 14;
constexpr double lineWidth = 1.5;

} // namespace

ClassSign::ClassSign(QuestionClass weight, QWidget* parent)
    : QWidget(parent)
    , m_weight(weight)
{
    setFixedSize(sizeHint());
}

QSize ClassSign::sizeHint() const
{
    const int scaledSide = scaled(side, appliedFactor());
    return {scaledSide, scaledSide};
}

void ClassSign::paintEvent(QPaintEvent*)
{
    const Tokens tokens = tokensOf(palette());
    QPainter painter(this);
    const QRectF box = QRectF(rect()).adjusted(1, 1, -1, -1);
    const double bar = box.height() / 5;
    const QRectF barBox(box.left() + bar, box.center().y() - bar / 2, box.width() - 2 * bar, bar);
    switch (m_weight) {
    case QuestionClass::contraindication:
        painter.fillRect(box, tokens.ink);
        painter.fillRect(barBox, tokens.sheet);
        break;
    case QuestionClass::localContraindication:
        painter.setPen(QPen(tokens.ink, lineWidth, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5));
        painter.fillRect(barBox, tokens.ink);
        break;
    case QuestionClass::precaution:
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(tokens.ink, lineWidth, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter.drawPolygon(QPolygonF({QPointF(box.center().x(), box.top() + 0.5),
                                       box.bottomRight() - QPointF(0.5, 0.5),
                                       box.bottomLeft() + QPointF(0.5, -0.5)}));
        break;
    }
}

} // namespace quadrille::app
