// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/strips.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace quadrille::app
{

namespace
{

/// Leaves room for the upper edge of a frame.
constexpr double belowContinued = 18;

/// Shorter rows and paragraphs are not broken at all.
constexpr std::size_t fewLines = 8;

/// No line of a paragraph stands alone above or below the end of a page.
BreakBelow belowLine(std::size_t line, std::size_t lines)
{
    if (line + 1 == lines) {
        return BreakBelow::free;
    }
    const bool alone = line == 0 || line + 2 == lines;
    return alone || lines <= fewLines ? BreakBelow::never : BreakBelow::avoid;
}

} // namespace

void Cell::add(const TextBlock& block)
{
    for (int i = 0; i < block.lineCount(); ++i) {
        lines.push_back(
            {block.lineHeight(), block.lineText(i), [block, i](QPainter& painter, QPointF topLeft) {
                 block.drawLine(painter, i, topLeft);
             }});
    }
}

std::vector<StripHeight> heightsOf(const std::vector<Strip>& strips)
{
    std::vector<StripHeight> heights;
    std::ranges::transform(strips, std::back_inserter(heights), &Strip::size);
    return heights;
}

std::size_t pagesOf(const std::vector<Strip>& strips, double pageHeight)
{
    return breakPages(heightsOf(strips), pageHeight).size();
}

std::vector<Strip> continuing(std::vector<Strip> strips, const TextBlock& line, double left)
{
    Cell cell{left, {}};
    cell.add(line);
    std::vector<LineAbove> lines;
    for (const CellLine& piece : cell.lines) {
        lines.push_back(
            {piece.height, piece.text.simplified(), [piece, left](QPainter& painter, double top) {
                 piece.draw(painter, {left, top});
             }});
    }
    for (Strip& strip : strips) {
        strip.continued = lines;
        strip.size.continued = line.height() + belowContinued;
    }
    return strips;
}

void append(std::vector<Strip>& to, std::vector<Strip> from)
{
    std::ranges::move(from, std::back_inserter(to));
}

StripBuilder::StripBuilder(PrintSize size, double left, double width)
    : m_size(size)
    , m_left(left)
    , m_width(width)
{
}

void StripBuilder::add(Strip strip)
{
    strip.size.spaceBefore = std::exchange(m_space, 0);
    m_strips.push_back(std::move(strip));
}

void StripBuilder::paragraph(const RichText& text, PrintText style, double indent)
{
    Cell cell{m_left + indent, {}};
    cell.add(TextBlock(text, style, m_size, m_width - indent));
    row({cell});
}

void StripBuilder::row(const std::vector<Cell>& cells)
{
    std::size_t lines = 0;
    for (const Cell& cell : cells) {
        lines = std::max(lines, cell.lines.size());
    }
    for (std::size_t line = 0; line < lines; ++line) {
        Strip strip;
        std::vector<std::pair<double, CellLine>> pieces;
        QStringList texts;
        for (const Cell& cell : cells) {
            if (line < cell.lines.size()) {
                pieces.emplace_back(cell.x, cell.lines[line]);
                strip.size.height = std::max(strip.size.height, cell.lines[line].height);
                texts.append(cell.lines[line].text);
            }
        }
        strip.size.below = belowLine(line, lines);
        strip.text = texts.join(QLatin1Char(' ')).simplified();
        strip.draw = [pieces](QPainter& painter, double top) {
            for (const auto& [x, piece] : pieces) {
                piece.draw(painter, {x, top});
            }
        };
        add(std::move(strip));
    }
}

void StripBuilder::piece(double height, const QString& text,
                         std::function<void(QPainter& painter, double top)> draw)
{
    Strip strip;
    strip.size.height = height;
    strip.text = text;
    strip.draw = std::move(draw);
    add(std::move(strip));
}

void StripBuilder::drawOver(std::size_t strip,
                            std::function<void(QPainter& painter, double top)> draw)
{
    m_strips[strip].draw = [first = m_strips[strip].draw,
                            second = std::move(draw)](QPainter& painter, double top) {
        first(painter, top);
        second(painter, top);
    };
}

void StripBuilder::keepWithNext()
{
    if (!m_strips.empty()) {
        m_strips.back().size.below = BreakBelow::never;
    }
}

void StripBuilder::keepTogether(std::size_t first)
{
    for (std::size_t i = first; i + 1 < m_strips.size(); ++i) {
        m_strips[i].size.below = std::max(m_strips[i].size.below, BreakBelow::avoid);
    }
}

void StripBuilder::frame(std::size_t first, int number, double line)
{
    for (std::size_t i = first; i < m_strips.size(); ++i) {
        m_strips[i].frame = number;
        m_strips[i].frameLine = line;
    }
}

std::vector<Strip> StripBuilder::take()
{
    return std::exchange(m_strips, {});
}

} // namespace quadrille::app
