// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/card_layout.h"

#include "app/print/settings_box.h"
#include "app/print/spacing.h"

#include <QPainter>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr double boxLine = 1.5;
constexpr double betweenNumbers = 20;

/// The parts of a card, each set with the same spacing.
struct CardParts {
    std::vector<Strip> top; ///< title and big numbers
    std::vector<Strip> box; ///< settings
    std::vector<Strip> steps;
};

void titleStrips(StripBuilder& builder, const QString& title, const CardText& card)
{
    builder.paragraph(bold(title), PrintText::title);
    builder.keepWithNext();
    builder.space(3);
    builder.paragraph(card.who, PrintText::text);
    builder.paragraph(card.when, PrintText::text);
    if (!card.next.isEmpty()) {
        builder.paragraph(plain(card.next), PrintText::text);
    }
    builder.keepTogether(0);
}

/// The number in its box, made smaller where it is wider than the box.
void drawNumber(QPainter& painter, const TextBlock& number, const QRectF& box)
{
    painter.setPen(QPen(printTokens().ink, boxLine, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    const double inset = boxLine / 2;
    painter.drawRect(box.adjusted(inset, inset, -inset, -inset));
    const double fit = std::min(1.0, (box.width() - 12) / std::max(number.naturalWidth(), 1.0));
    painter.save();
    painter.translate(box.center());
    painter.scale(fit, fit);
    number.draw(painter, {-number.naturalWidth() / 2, -number.lineHeight() / 2});
    painter.restore();
}

/// Seven squares with their letters; a day without session is a dot, as in the grid.
CellLine weekdaySquares(const std::vector<WeekdaySquare>& squares, PrintSize size, double width)
{
    const double pitch = width / 7;
    const double side = size == PrintSize::large ? 14 : 12;
    const double letterTop = side + 7;
    std::vector<TextBlock> letters;
    QString text;
    for (const WeekdaySquare& square : squares) {
        letters.emplace_back(plain(square.letter), PrintText::small, size, pitch,
                             Qt::AlignHCenter);
        text += square.prescribed ? square.letter : QStringLiteral("·");
    }
    const auto draw = [=](QPainter& painter, QPointF topLeft) {
        for (std::size_t i = 0; i < squares.size(); ++i) {
            const double left = topLeft.x() + static_cast<double>(i) * pitch;
            const QRectF square(left + (pitch - side) / 2, topLeft.y() + 4, side, side);
            if (squares[i].prescribed) {
                painter.setPen(QPen(printTokens().ink, 1.5, Qt::SolidLine, Qt::SquareCap,
                                    Qt::MiterJoin));
                painter.setBrush(Qt::NoBrush);
                painter.drawRect(square.adjusted(0.75, 0.75, -0.75, -0.75));
            } else {
                painter.setPen(Qt::NoPen);
                painter.setBrush(printTokens().ink);
                painter.drawEllipse(square.center(), 1.75, 1.75);
            }
            painter.setPen(printTokens().ink2);
            painter.setBrush(Qt::NoBrush);
            letters[i].draw(painter, {left, topLeft.y() + letterTop});
        }
    };
    return {letterTop + pointSize(PrintText::small, size).line, text, draw};
}

void numberStrips(StripBuilder& builder, const CardText& card)
{
    const PrintSize size = builder.size();
    const double columns = static_cast<double>(std::max<std::size_t>(card.numbers.size(), 1));
    const double pitch = (builder.width() + betweenNumbers) / columns;
    const double columnWidth = pitch - betweenNumbers;
    const QSizeF box(columnWidth - 14, pointSize(PrintText::bigNumber, size).line + 10);
    std::vector<TextBlock> numbers;
    std::vector<Cell> below;
    QString text;
    for (std::size_t i = 0; i < card.numbers.size(); ++i) {
        const BigNumberText& number = card.numbers[i];
        numbers.emplace_back(bold(number.number), PrintText::bigNumber, size, 1e4);
        Cell cell{builder.left() + static_cast<double>(i) * pitch, {}};
        cell.add({bold(number.label), PrintText::stepHead, size, columnWidth});
        if (!number.below.isEmpty()) {
            cell.add({plain(number.below), PrintText::small, size, columnWidth});
        }
        if (!number.squares.empty()) {
            cell.lines.push_back(weekdaySquares(number.squares, size, columnWidth));
        }
        below.push_back(cell);
        text += number.number + QLatin1Char(' ') + number.label + QLatin1Char(' ');
    }
    const std::size_t first = builder.count();
    const double left = builder.left();
    builder.piece(box.height(), text.trimmed(), [=](QPainter& painter, double top) {
        for (std::size_t i = 0; i < numbers.size(); ++i) {
            drawNumber(painter, numbers[i],
                       QRectF(QPointF(left + static_cast<double>(i) * pitch, top), box));
        }
    });
    builder.keepWithNext();
    builder.space(5);
    builder.row(below);
    builder.keepTogether(first);
}

std::vector<Strip> topStrips(const CardText& card, PrintSize size, const Spacing& spacing,
                             const TextColumn& column)
{
    StripBuilder builder(size, column.left, column.width);
    titleStrips(builder, card.title, card);
    builder.keepWithNext();
    builder.space(spacing.section - 4);
    numberStrips(builder, card);
    return builder.take();
}

std::vector<Strip> stepStrips(const CardText& card, PrintSize size, const Spacing& spacing,
                              const TextColumn& column)
{
    StripBuilder builder(size, column.left, column.width);
    for (std::size_t i = 0; i < card.steps.size(); ++i) {
        const StepText& step = card.steps[i];
        const std::size_t first = builder.count();
        builder.space(i == 0 ? spacing.section : spacing.step);
        builder.paragraph(bold(step.head), PrintText::stepHead);
        const TextBlock number(bold(QString::number(i + 1)), PrintText::stepNumber, size,
                               column.marginLine - 8 - 20, Qt::AlignRight | Qt::AlignAbsolute);
        builder.drawOver(first, [=](QPainter& painter, double top) {
            number.draw(painter, {20, top});
        });
        for (const RichText& paragraph : step.body) {
            builder.keepWithNext();
            builder.paragraph(paragraph, PrintText::text);
        }
        builder.keepTogether(first);
    }
    return builder.take();
}

CardParts partsOf(const CardText& card, PrintSize size, const Spacing& spacing,
                  const TextColumn& column)
{
    CardParts parts{topStrips(card, size, spacing, column),
                    settingsBox(card, size, spacing, column.left, column.width),
                    stepStrips(card, size, spacing, column)};
    // A frame stands out of its strips by its padding.
    const double padding = pageFrame(size).framePadding;
    parts.box.front().size.spaceBefore = spacing.section + padding - 4;
    return parts;
}

void spaceAfterBox(std::vector<Strip>& steps, PrintSize size)
{
    if (!steps.empty()) {
        steps.front().size.spaceBefore += pageFrame(size).framePadding;
    }
}

double heightOf(const CardParts& parts)
{
    return quadrille::app::heightOf(parts.top) + parts.box.front().size.spaceBefore +
           quadrille::app::heightOf(parts.box) +
           (parts.steps.empty() ? 0 : parts.steps.front().size.spaceBefore) +
           quadrille::app::heightOf(parts.steps);
}

/// The box on a page of its own says once more whose it is and for when.
std::vector<Strip> boxPage(const CardText& card, CardParts parts, PrintSize size,
                           const TextColumn& column)
{
    StripBuilder builder(size, column.left, column.width);
    titleStrips(builder, card.settingsPageTitle, card);
    builder.keepWithNext();
    std::vector<Strip> page = builder.take();
    page.front().size.startsPage = true;
    append(page, std::move(parts.box));
    return page;
}

} // namespace

std::vector<Strip> cardStrips(const CardText& card, PrintSize size, const TextColumn& column)
{
    for (const Spacing& spacing : spacings(size)) {
        CardParts parts = partsOf(card, size, spacing, column);
        spaceAfterBox(parts.steps, size);
        if (heightOf(parts) + 0.5 <= column.height) {
            std::vector<Strip> strips = std::move(parts.top);
            append(strips, std::move(parts.box));
            append(strips, std::move(parts.steps));
            return strips;
        }
    }
    CardParts parts = partsOf(card, size, spacings(size).front(), column);
    std::vector<Strip> strips = parts.top;
    append(strips, parts.steps);
    append(strips, boxPage(card, std::move(parts), size, column));
    return strips;
}

} // namespace quadrille::app
