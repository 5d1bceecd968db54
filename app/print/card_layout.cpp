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
        letters.emplace_back(plain(square.letter), PrintText::small, size, pitch, Qt::AlignHCenter);
        text += square.prescribed ? square.letter : QStringLiteral("·");
    }
    const auto draw = [=](QPainter& painter, QPointF topLeft) {
        for (std::size_t i = 0; i < squares.size(); ++i) {
            const double left = topLeft.x() + static_cast<double>(i) * pitch;
            const QRectF square(left, topLeft.y() + 4, side, side);
            if (squares[i].prescribed) {
                painter.setPen(
                    QPen(printTokens().ink, 1.5, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
                painter.setBrush(Qt::NoBrush);
                painter.drawRect(square.adjusted(0.75, 0.75, -0.75, -0.75));
            } else {
                painter.setPen(Qt::NoPen);
                painter.setBrush(printTokens().ink);
                painter.drawEllipse(square.center(), 2, 2);
            }
            painter.setPen(printTokens().ink2);
            painter.setBrush(Qt::NoBrush);
            letters[i].draw(painter, {square.center().x() - pitch / 2, topLeft.y() + letterTop});
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
    std::vector<Cell> labels;
    std::vector<Cell> below;
    QString text;
    for (std::size_t i = 0; i < card.numbers.size(); ++i) {
        const BigNumberText& number = card.numbers[i];
        numbers.emplace_back(bold(number.number), PrintText::bigNumber, size, 1e4);
        Cell label{builder.left() + static_cast<double>(i) * pitch, {}};
        label.add({bold(number.label), PrintText::stepHead, size, columnWidth});
        labels.push_back(label);
        Cell cell{label.x, {}};
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
    builder.row(labels);
    builder.keepWithNext();
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

/// Strips further from those above, e.g. to leave room for a frame.
std::vector<Strip> lowered(std::vector<Strip> strips, double points)
{
    if (!strips.empty()) {
        strips.front().size.spaceBefore += points;
    }
    return strips;
}

/// All on one page, or more where it does not fit.
std::vector<Strip> onePage(const CardText& card, PrintSize size, const Spacing& spacing,
                           const TextColumn& column)
{
    const double padding = pageFrame(size).framePadding;
    std::vector<Strip> strips = topStrips(card, size, spacing, column);
    append(strips, lowered(settingsBox(card, size, spacing, column.left, column.width),
                           spacing.section + padding - 4));
    append(strips, lowered(stepStrips(card, size, spacing, column), padding));
    return strips;
}

std::vector<Strip> withoutBox(const CardText& card, PrintSize size, const Spacing& spacing,
                              const TextColumn& column)
{
    std::vector<Strip> strips = topStrips(card, size, spacing, column);
    append(strips, stepStrips(card, size, spacing, column));
    return strips;
}

/// The box on a page of its own says once more whose it is and for when.
std::vector<Strip> boxPage(const CardText& card, PrintSize size, const Spacing& spacing,
                           const TextColumn& column)
{
    StripBuilder builder(size, column.left, column.width);
    titleStrips(builder, card.settingsPageTitle, card);
    builder.keepWithNext();
    std::vector<Strip> page = builder.take();
    page.front().size.startsPage = true;
    append(page, lowered(settingsBox(card, size, spacing, column.left, column.width),
                         spacing.section + pageFrame(size).framePadding));
    return page;
}

} // namespace

std::vector<Strip> cardStrips(const CardText& card, PrintSize size, const TextColumn& column)
{
    const TextBlock line(card.continued, PrintText::text, size, column.width);
    const auto fewest = [&](const auto& set) {
        return onFewestPages(size, column.height, [&](const Spacing& spacing) {
            return continuing(set(card, size, spacing, column), line, column.left);
        });
    };
    std::vector<Strip> whole = fewest(onePage);
    if (pagesOf(whole, column.height) == 1) {
        return whole;
    }
    std::vector<Strip> strips = fewest(withoutBox);
    append(strips, fewest(boxPage));
    return strips;
}

} // namespace quadrille::app
