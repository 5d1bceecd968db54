// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/paper_view.h"

#include "app/look/look.h"
#include "app/look/shapes.h"
#include "app/look/tokens.h"
#include "app/print/page_painter.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>
#include <cmath>
#include <utility>

namespace quadrille::app
{

namespace
{

/// Desk around and between pages, px.
constexpr double around = space::insideSheet;
/// Paper is never shown larger than this many px to the point: about twice its size at 96 dpi.
constexpr double mostScale = 2.7;
constexpr double leastScale = 0.1;

} // namespace

PaperView::PaperView(QWidget* parent)
    : QAbstractScrollArea(parent)
{
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    // The bar keeps its place, so that the width of a page does not depend on its height.
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    viewport()->setBackgroundRole(QPalette::Window);
}

void PaperView::setDocument(std::optional<HandoutDocument> document)
{
    m_document = std::move(document);
    m_current = 0;
    fit();
    verticalScrollBar()->setValue(0);
    noticePage();
    emit pageChanged();
    viewport()->update();
}

void PaperView::setZoom(PaperZoom zoom)
{
    const int page = m_current;
    m_zoom = zoom;
    fit();
    goToPage(page);
    viewport()->update();
}

int PaperView::pageCount() const
{
    return m_document ? m_document->pageCount() : 0;
}

double PaperView::scale() const
{
    if (!m_document) {
        return 1;
    }
    const QSizeF paper = m_document->pageSize();
    const double wide = (viewport()->width() - 2 * around) / paper.width();
    const double high = (viewport()->height() - 2 * around) / paper.height();
    return std::clamp(m_zoom == PaperZoom::wholePage ? std::min(wide, high) : wide, leastScale,
                      mostScale);
}

QRectF PaperView::pageRect(int page) const
{
    const QSizeF paper = m_document->pageSize() * scale();
    const QSizeF whole(std::round(paper.width()), std::round(paper.height()));
    return {QPointF(std::floor((viewport()->width() - whole.width()) / 2),
                    around + page * (whole.height() + around)),
            whole};
}

void PaperView::fit()
{
    QScrollBar* bar = verticalScrollBar();
    const double height = m_document ? pageRect(pageCount()).top() : 0;
    bar->setPageStep(viewport()->height());
    bar->setSingleStep(size::field * 2);
    bar->setRange(0, std::max(0, static_cast<int>(height) - viewport()->height()));
}

void PaperView::goToPage(int page)
{
    if (!m_document) {
        return;
    }
    const int wanted = std::clamp(page, 0, pageCount() - 1);
    verticalScrollBar()->setValue(static_cast<int>(pageRect(wanted).top() - around));
    // At the end the last pages may all be in view; the one asked for counts.
    if (m_current != wanted) {
        m_current = wanted;
        emit pageChanged();
    }
}

void PaperView::noticePage()
{
    if (!m_document) {
        return;
    }
    const double middle = verticalScrollBar()->value() + viewport()->height() / 2.0;
    int page = 0;
    while (page + 1 < pageCount() && pageRect(page + 1).top() <= middle) {
        ++page;
    }
    if (page != m_current) {
        m_current = page;
        emit pageChanged();
    }
}

void PaperView::paintEvent(QPaintEvent* event)
{
    QPainter painter(viewport());
    const Tokens tokens = tokensOf(palette());
    painter.fillRect(event->rect(), tokens.desk);
    for (int page = 0; page < pageCount(); ++page) {
        const QRectF paper = pageRect(page).translated(0, -verticalScrollBar()->value());
        if (!paper.intersects(event->rect())) {
            continue;
        }
        painter.fillRect(paper, printTokens().sheet);
        painter.setPen(tokens.line);
        painter.drawRect(paper.toRect().adjusted(0, 0, -1, -1));
        paintPage(painter, *m_document, page, paper);
    }
    if (hasFocus()) {
        drawFocusRing(painter, viewport()->rect().adjusted(2, 2, -2, -2), tokens.mark);
    }
}

void PaperView::resizeEvent(QResizeEvent* event)
{
    QAbstractScrollArea::resizeEvent(event);
    const int page = m_current;
    fit();
    goToPage(page);
}

void PaperView::keyPressEvent(QKeyEvent* event)
{
    if (event->modifiers() != Qt::NoModifier && event->modifiers() != Qt::KeypadModifier) {
        return QAbstractScrollArea::keyPressEvent(event);
    }
    switch (event->key()) {
    case Qt::Key_PageDown:
        return goToPage(m_current + 1);
    case Qt::Key_PageUp:
        return goToPage(m_current - 1);
    case Qt::Key_Home:
        return goToPage(0);
    case Qt::Key_End:
        return goToPage(pageCount() - 1);
    default:
        return QAbstractScrollArea::keyPressEvent(event);
    }
}

void PaperView::scrollContentsBy(int, int)
{
    noticePage();
    viewport()->update();
}

void PaperView::focusInEvent(QFocusEvent* event)
{
    QAbstractScrollArea::focusInEvent(event);
    viewport()->update();
}

void PaperView::focusOutEvent(QFocusEvent* event)
{
    QAbstractScrollArea::focusOutEvent(event);
    viewport()->update();
}

} // namespace quadrille::app
