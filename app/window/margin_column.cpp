// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/margin_column.h"

#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QPainter>
#include <QToolButton>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

/// The chevron that leads back, painted with the text's colour.
class BackButton : public QToolButton
{
public:
    using QToolButton::QToolButton;

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        const Tokens tokens = tokensOf(palette());
        painter.setRenderHint(QPainter::Antialiasing);
        if (hasFocus()) {
            painter.setPen(QPen(tokens.mark, stroke::focus));
            painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
        }
        painter.setPen(QPen(underMouse() ? tokens.ink : tokens.mark, 2.2, Qt::SolidLine,
                            Qt::FlatCap, Qt::MiterJoin));
        const QPointF middle = QRectF(rect()).center();
        painter.drawPolyline(QPolygonF{middle + QPointF(3, -5.5), middle + QPointF(-3, 0),
                                       middle + QPointF(3, 5.5)});
    }
};

} // namespace

MarginColumn::MarginColumn(QWidget* parent)
    : QWidget(parent)
{
    setFixedWidth(size::marginColumn + 1);
    auto* back = new BackButton(this);
    back->setAccessibleName(tr("Back to the caseload"));
    back->setToolTip(tr("Back to the caseload (Alt Left)"));
    back->setObjectName(QStringLiteral("back"));
    back->setFixedSize(size::button, size::button);
    back->setFocusPolicy(Qt::StrongFocus);
    connect(back, &QToolButton::clicked, this, &MarginColumn::backRequested);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, space::betweenSheets, 0, 0);
    layout->addWidget(back, 0, Qt::AlignHCenter);
    layout->addStretch();
}

void MarginColumn::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.fillRect(QRect(width() - 1, 0, 1, height()), tokensOf(palette()).margin);
}

} // namespace quadrille::app
