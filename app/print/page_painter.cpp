// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/page_painter.h"

#include "app/print/handout_document.h"

#include <QPainter>

namespace quadrille::app
{

namespace
{

void drawFrame(QPainter& painter, const PageEdges& edges, double top, double bottom, double line)
{
    painter.setPen(QPen(printTokens().ink, line, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    const double padding = edges.framePadding();
    painter.drawRect(QRectF(edges.left(), top - padding, edges.width(), bottom - top + 2 * padding)
                         .adjusted(line / 2, line / 2, -line / 2, -line / 2));
    painter.setPen(printTokens().ink);
}

/// A frame around each run of strips that share one.
void drawFrames(QPainter& painter, const PageEdges& edges, const std::vector<PlacedStrip>& strips)
{
    std::size_t first = 0;
    while (first < strips.size()) {
        std::size_t last = first;
        const int frame = strips[first].strip.frame;
        while (last + 1 < strips.size() && strips[last + 1].strip.frame == frame) {
            ++last;
        }
        if (frame != 0) {
            drawFrame(painter, edges, strips[first].top,
                      strips[last].top + strips[last].strip.size.height,
                      strips[first].strip.frameLine);
        }
        first = last + 1;
    }
}

} // namespace

void paintPage(QPainter& painter, const HandoutDocument& document, int page, const QRectF& target)
{
    const QSizeF paper = document.pageSize();
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.translate(target.topLeft());
    painter.scale(target.width() / paper.width(), target.height() / paper.height());
    document.edges().draw(painter, page, document.pageCount());
    drawFrames(painter, document.edges(), document.page(page));
    for (const PlacedStrip& placed : document.page(page)) {
        painter.setPen(printTokens().ink);
        placed.strip.draw(painter, placed.top);
    }
    painter.restore();
}

} // namespace quadrille::app
