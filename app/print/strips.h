// SPDX-License-Identifier: GPL-3.0-or-later
// The content of a handout as indivisible strips from top to bottom, still without pages.
#pragma once

#include "app/print/page_breaking.h"
#include "app/print/text_block.h"

#include <QString>

#include <functional>
#include <vector>

class QPainter;

namespace quadrille::app
{

/// A line above a strip.
struct LineAbove {
    double height = 0;
    QString text;
    std::function<void(QPainter& painter, double top)> draw;
};

/// A strip and how it is drawn. x coordinates are on the page, `top` is where the strip lies.
struct Strip {
    StripHeight size;
    QString text; ///< what it says, for reading out
    std::function<void(QPainter& painter, double top)> draw;
    int frame = 0;        ///< strips that follow each other with the same number share a frame
    double frameLine = 0; ///< width of the frame's line
    /// What stands above it where a page begins with it in the middle of something;
    /// `size.continued` is its height with the space below.
    std::vector<LineAbove> continued = {};
};

/// One line of a cell: text, or something drawn.
struct CellLine {
    double height = 0;
    QString text;
    std::function<void(QPainter& painter, QPointF topLeft)> draw;
};

/// One cell of a row: lines on top of each other from `x`.
struct Cell {
    double x = 0;
    std::vector<CellLine> lines;

    void add(const TextBlock& block);
};

/// Heights alone, for breaking pages.
std::vector<StripHeight> heightsOf(const std::vector<Strip>& strips);
/// How many pages of `pageHeight` the strips take.
std::size_t pagesOf(const std::vector<Strip>& strips, double pageHeight);
/// Strips that say on top of a page on which they go on what they belong to.
std::vector<Strip> continuing(std::vector<Strip> strips, const TextBlock& line, double left);
void append(std::vector<Strip>& to, std::vector<Strip> from);

/// Builds strips downwards in a column.
class StripBuilder
{
public:
    StripBuilder(PrintSize size, double left, double width);

    PrintSize size() const { return m_size; }
    double left() const { return m_left; }
    double width() const { return m_width; }

    /// White space above the next strip.
    void space(double points) { m_space += points; }
    /// A paragraph over the column's width less `indent`. Its first and last two lines stay
    /// together.
    void paragraph(const RichText& text, PrintText style, double indent = 0);
    /// Cells side by side, line by line.
    void row(const std::vector<Cell>& cells);
    /// Something drawn in one piece.
    void piece(double height, const QString& text,
               std::function<void(QPainter& painter, double top)> draw);
    /// Draws on top of the strip added last, from its top.
    void drawOver(std::size_t strip, std::function<void(QPainter& painter, double top)> draw);
    /// Index of the next strip.
    std::size_t count() const { return m_strips.size(); }
    const StripHeight& heightAt(std::size_t strip) const { return m_strips[strip].size; }
    /// The strip added last stays on one page with the next one.
    void keepWithNext();
    /// Strips since `first` are better kept on one page.
    void keepTogether(std::size_t first);
    /// Strips since `first` stand in a frame `inset` around them.
    void frame(std::size_t first, int number, double line);

    std::vector<Strip> take();

private:
    void add(Strip strip);

    PrintSize m_size;
    double m_left;
    double m_width;
    double m_space = 0;
    std::vector<Strip> m_strips;
};

} // namespace quadrille::app
