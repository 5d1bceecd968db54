// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/print/paper_format.h"
#include "app/print/rich_text.h"

#include <QPointF>
#include <QString>

#include <memory>

class QPainter;
class QTextLayout;

namespace quadrille::app
{

/// A paragraph broken into lines of a given width, in points. It is laid out without a device, so
/// that screen, printer and file break lines alike. Lines never lose words: what has no place to
/// break is broken anywhere.
class TextBlock
{
public:
    /// `width` in points; at least one character stands on a line.
    TextBlock(const RichText& text, PrintText style, PrintSize size, double width,
              Qt::Alignment alignment = Qt::AlignLeading);

    int lineCount() const;
    /// Base line to base line, points.
    double lineHeight() const { return m_lineHeight; }
    double height() const { return m_lineHeight * lineCount(); }
    /// Width of the widest line, points.
    double naturalWidth() const;
    QString lineText(int line) const;
    /// Draws one line with the painter's pen; `topLeft` in points.
    void drawLine(QPainter& painter, int line, QPointF topLeft) const;
    /// Draws all lines.
    void draw(QPainter& painter, QPointF topLeft) const;

private:
    double m_lineHeight;
    double m_baseline; ///< below the top of a line
    std::shared_ptr<const QTextLayout> m_layout;
};

/// Width of a text on one line, points.
double widthOf(const RichText& text, PrintText style, PrintSize size);

} // namespace quadrille::app
