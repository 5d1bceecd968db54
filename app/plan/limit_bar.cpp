// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/limit_bar.h"

#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QPainter>

#include <algorithm>

namespace quadrille::app
{

namespace
{
constexpr double limitAt = 0.8;
} // namespace

LimitBar::LimitBar(QWidget* parent)
    : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void LimitBar::setShare(double share)
{
    m_share = share;
    update();
}

void LimitBar::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    const Tokens tokens = tokensOf(palette());
    const int middle = height() / 2;
    painter.fillRect(QRect(0, middle, width(), 1), tokens.line);
    const double shown = std::clamp(m_share * limitAt, 0.0, 1.0);
    const QColor bar = m_share > 1.0 ? tokens.warnLine : tokens.mark;
    painter.fillRect(QRectF(0, middle - 3, shown * width(), 7), bar);
    painter.fillRect(QRectF(limitAt * width(), 0, 2, height()), tokens.ink);
}

} // namespace quadrille::app
