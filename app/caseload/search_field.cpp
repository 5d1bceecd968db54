// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/search_field.h"

#include "app/look/look.h"
#include "app/look/shapes.h"

#include <QKeyEvent>
#include <QPainter>

namespace quadrille::app
{

namespace
{

constexpr int magnifierSide = 15;
constexpr int magnifierLeft = 9;
constexpr int textLeft = 30;
constexpr int keyHeight = 18;
constexpr int keyPadding = 6;

int px(int at100)
{
    return scaled(at100, appliedFactor());
}

QFont keyFont()
{
    return fontOf(TextStyle::axis, appliedFactor());
}

} // namespace

SearchField::SearchField(const QString& key, QWidget* parent)
    : QLineEdit(parent)
    , m_key(key)
{
    constexpr int longest = 200; // more than any name, reference and problem together
    setMaxLength(longest);
    setTextRoom();
}

void SearchField::setTextRoom()
{
    const int key = QFontMetrics(keyFont()).horizontalAdvance(m_key) + px(4 * keyPadding);
    setTextMargins(px(textLeft - 8), 0, key - px(keyPadding), 0);
}

void SearchField::changeEvent(QEvent* event)
{
    QLineEdit::changeEvent(event);
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange) {
        setTextRoom();
    }
}

void SearchField::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape && !text().isEmpty()) {
        clear();
        return;
    }
    if (event->key() == Qt::Key_Down) {
        emit leftDownwards();
        return;
    }
    QLineEdit::keyPressEvent(event);
}

void SearchField::paintEvent(QPaintEvent* event)
{
    QLineEdit::paintEvent(event);
    const Tokens tokens = tokensOf(palette());
    QPainter painter(this);
    const int side = px(magnifierSide);
    drawMagnifier(painter, QRectF(px(magnifierLeft), (height() - side) / 2.0, side, side),
                  tokens.ink3);
    if (!text().isEmpty()) {
        return;
    }
    painter.setFont(keyFont());
    const int width = QFontMetrics(keyFont()).horizontalAdvance(m_key) + px(2 * keyPadding);
    const int tall = px(keyHeight);
    const QRect cap(this->width() - width - px(space::close), (height() - tall) / 2, width, tall);
    drawBox(painter, cap, QColor(), tokens.edge, stroke::line, stroke::cornerRadius);
    painter.setPen(tokens.ink2);
    painter.drawText(cap, Qt::AlignCenter, m_key);
}

} // namespace quadrille::app
