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
        painter.drawRect(QRectF(centre - QPointF(half, half) * 0.6,
                                centre + QPointF(half, half) * 0.6));
        break;
    case ListMark::diamond:
        painter.drawPolygon(QPolygonF({centre + QPointF(0, -half * 1.15),
                                       centre + QPointF(half * 1.15, 0),
                                       centre + QPointF(0, half * 1.15),
                                       centre + QPointF(-half * 1.15, 0)}));
        break;
    }
    painter.setPen(printTokens().ink);
    painter.setBrush(Qt::NoBrush);
}

void listStrips(StripBuilder& builder, const SafetyList& list, double itemSpace)
{
    const double line = pointSize(PrintText::text, builder.size()).line;
    const double side = line * 0.54;
    builder.paragraph(bold(list.heading), PrintText::heading);
    for (const QString& item : list.items) {
        builder.keepWithNext();
        builder.space(itemSpace);
        const std::size_t first = builder.count();
        builder.paragraph(plain(item), PrintText::text, side * 2.1);
        builder.drawOver(first, [=, mark = list.mark, left = builder.left()](QPainter& painter,
                                                                            double top) {
            drawMark(painter, mark, {left + side / 2, top + line / 2 + side * 0.06}, side);
        });
        builder.keepTogether(first);
        if (&item == &list.items.front()) {
            continue;
        }
    }
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

std::vector<Strip> strips(const SafetyText& safety, PrintSize size, const TextColumn& column,
                          const Spacing& spacing)
{
    const PageFrame frame = pageFrame(size);
    StripBuilder builder(size, column.left, column.width);
    builder.paragraph(bold(safety.title), PrintText::title);
    builder.keepWithNext();
    for (const SafetyList& list : safety.lists) {
        builder.space(&list == &safety.lists.front() ? 4 : spacing.heading);
        listStrips(builder, list, spacing.item);
    }
    std::vector<Strip> all = builder.take();

    StripBuilder box(size, column.left + frame.frameInset, column.width - 2 * frame.frameInset);
    box.space(spacing.section + frame.framePadding);
    listStrips(box, safety.stop, spacing.item - 1);
    box.keepTogether(0);
    box.frame(0, frameNumber, frameLine);
    // The box and the telephone numbers belong on one page.
    std::vector<Strip> stop = box.take();
    stop.back().size.below = BreakBelow::avoid;
    append(all, std::move(stop));

    StripBuilder ring(size, column.left, column.width);
    ring.space(frame.framePadding + spacing.item + 4);
    const std::size_t first = ring.count();
    ringStrips(ring, safety);
    ring.keepTogether(first);
    append(all, ring.take());
    return all;
}

} // namespace

std::vector<Strip> safetyStrips(const SafetyText& safety, PrintSize size, const TextColumn& column)
{
    for (const Spacing& spacing : spacings(size)) {
        std::vector<Strip> one = strips(safety, size, column, spacing);
        if (heightOf(one) + 0.5 <= column.height) {
            return one;
        }
    }
    return strips(safety, size, column, spacings(size).front());
}

} // namespace quadrille::app
