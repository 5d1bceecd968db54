// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/safety_layout.h"

#include "app/print/spacing.h"

#include <QPainter>
#include <QPolygonF>

namespace quadrille::app
{

namespace
{

constexpr int frameNumber = 2;
constexpr double frameLine = 3;
constexpr double betweenRings = 26;

void drawMark(QPainter& painter, ListMark mark, QPointF centre, double side)
{
    const double half = side / 2;
    painter.setPen(Qt::NoPen);
    painter.setBrush(printTokens().ink);
    switch (mark) {
    case ListMark::box: {
        const double inset = half - 0.75;
        painter.setPen(QPen(printTokens().ink, 1.5, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(centre - QPointF(inset, inset), centre + QPointF(inset, inset)));
        break;
    }
    case ListMark::square:
        painter.drawRect(
            QRectF(centre - QPointF(half, half) * 0.6, centre + QPointF(half, half) * 0.6));
        break;
    case ListMark::diamond:
        painter.drawPolygon(
            QPolygonF({centre + QPointF(0, -half * 1.15), centre + QPointF(half * 1.15, 0),
                       centre + QPointF(0, half * 1.15), centre + QPointF(-half * 1.15, 0)}));
        break;
    }
    painter.setPen(printTokens().ink);
    painter.setBrush(Qt::NoBrush);
}

void listStrips(StripBuilder& builder, const SafetyList& list, double itemSpace)
{
    const double line = pointSize(PrintText::text, builder.size()).line;
    const double side = line * 0.54;
    const std::size_t begins = builder.count();
    builder.paragraph(bold(list.heading), PrintText::heading);
    for (std::size_t i = 0; i < list.items.size(); ++i) {
        // Two items at least stand below a heading and on top of a page.
        if (i <= 1 || i + 1 == list.items.size()) {
            builder.keepWithNext();
        }
        builder.space(itemSpace);
        const std::size_t first = builder.count();
        builder.paragraph(plain(list.items[i]), PrintText::text, side * 2.1);
        builder.drawOver(
            first, [=, mark = list.mark, left = builder.left()](QPainter& painter, double top) {
                drawMark(painter, mark, {left + side / 2, top + line / 2 + side * 0.06}, side);
            });
    }
    builder.keepTogether(begins);
}

/// Lines of one column below its thick rule.
Cell ringCell(const RingText& ring, PrintSize size, double x, double width)
{
    Cell cell{x, {}};
    cell.lines.push_back({8, {}, [width](QPainter& painter, QPointF topLeft) {
                              painter.fillRect(QRectF(topLeft, QSizeF(width, 1.5)),
                                               printTokens().ink);
                          }});
    cell.add({plain(ring.who), PrintText::text, size, width});
    if (ring.number.isEmpty()) {
        const double height = pointSize(PrintText::telephone, size).line + 6;
        cell.lines.push_back({height, {}, [=](QPainter& painter, QPointF topLeft) {
                                  painter.fillRect(
                                      QRectF(topLeft.x(), topLeft.y() + height - 4, width, 0.75),
                                      printTokens().line);
                              }});
    } else {
        cell.add({bold(ring.number), PrintText::telephone, size, width});
    }
    if (!ring.below.isEmpty()) {
        cell.add({plain(ring.below), PrintText::small, size, width});
    }
    return cell;
}

void ringStrips(StripBuilder& builder, const SafetyText& safety)
{
    const double columns = static_cast<double>(std::max<std::size_t>(safety.ring.size(), 1));
    const double pitch = (builder.width() + betweenRings) / columns;
    std::vector<Cell> cells;
    for (std::size_t i = 0; i < safety.ring.size(); ++i) {
        cells.push_back(ringCell(safety.ring[i], builder.size(),
                                 builder.left() + static_cast<double>(i) * pitch,
                                 pitch - betweenRings));
    }
    builder.row(cells);
}

std::vector<Strip> listsOf(const SafetyText& safety, PrintSize size, const TextColumn& column,
                           const Spacing& spacing)
{
    StripBuilder builder(size, column.left, column.width);
    builder.paragraph(bold(safety.title), PrintText::title);
    builder.keepWithNext();
    for (std::size_t i = 0; i < safety.lists.size(); ++i) {
        builder.space(i == 0 ? spacing.heading / 2 : spacing.heading);
        listStrips(builder, safety.lists[i], spacing.item);
    }
    return builder.take();
}

/// The framed box and the telephone numbers, which belong on one page.
std::vector<Strip> stopAndRing(const SafetyText& safety, PrintSize size, const TextColumn& column,
                               const Spacing& spacing)
{
    const PageFrame frame = pageFrame(size);
    StripBuilder box(size, column.left + frame.frameInset, column.width - 2 * frame.frameInset);
    box.space(spacing.section + frame.framePadding);
    listStrips(box, safety.stop, spacing.item);
    box.frame(0, frameNumber, frameLine);
    std::vector<Strip> strips = box.take();
    strips.back().size.below = BreakBelow::avoid;

    StripBuilder ring(size, column.left, column.width);
    ring.space(frame.framePadding + spacing.section);
    ringStrips(ring, safety);
    ring.keepTogether(0);
    append(strips, ring.take());
    return strips;
}

std::vector<Strip> onePage(const SafetyText& safety, PrintSize size, const TextColumn& column,
                           const Spacing& spacing)
{
    std::vector<Strip> strips = listsOf(safety, size, column, spacing);
    append(strips, stopAndRing(safety, size, column, spacing));
    return strips;
}

std::vector<Strip> stopPage(const SafetyText& safety, PrintSize size, const TextColumn& column,
                            const Spacing& spacing)
{
    StripBuilder builder(size, column.left, column.width);
    builder.paragraph(bold(safety.stopTitle), PrintText::title);
    builder.keepWithNext();
    std::vector<Strip> strips = builder.take();
    strips.front().size.startsPage = true;
    append(strips, stopAndRing(safety, size, column, spacing));
    return strips;
}

} // namespace

std::vector<Strip> safetyStrips(const SafetyText& safety, PrintSize size, const TextColumn& column)
{
    const auto fewest = [&](const auto& set) {
        return onFewestPages(size, column.height, [&](const Spacing& spacing) {
            return set(safety, size, column, spacing);
        });
    };
    std::vector<Strip> whole = fewest(onePage);
    if (pagesOf(whole, column.height) == 1) {
        return whole;
    }
    std::vector<Strip> strips = fewest(listsOf);
    append(strips, fewest(stopPage));
    return strips;
}

} // namespace quadrille::app
