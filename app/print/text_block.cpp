// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/text_block.h"

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QTextCharFormat>
#include <QTextLayout>
#include <QTextOption>

#include <algorithm>
#include <cmath>

namespace quadrille::app
{

namespace
{

/// Text is laid out enlarged, in whole pixels of this many to the point: font sizes are whole
/// pixels then, and hinting has no say.
constexpr double unitsPerPoint = 20;

constexpr double anyWidth = 1e6;

bool isBold(PrintText style)
{
    return style != PrintText::text && style != PrintText::small && style != PrintText::headAndFoot;
}

int pixelsOf(PrintText style, PrintSize size)
{
    return static_cast<int>(std::lround(pointSize(style, size).font * unitsPerPoint));
}

QFont fontFor(PrintText style, PrintSize size)
{
    const QString first =
        style == PrintText::title ? QStringLiteral("Noto Serif") : QStringLiteral("Noto Sans");
    QFont font;
    font.setFamilies({first, QStringLiteral("Noto Sans Arabic"), QStringLiteral("DejaVu Sans")});
    font.setPixelSize(pixelsOf(style, size));
    font.setBold(isBold(style));
    font.setHintingPreference(QFont::PreferNoHinting);
    // The least spacing there is: it keeps letters from being joined into one glyph, which would be
    // found under neither in the text of a file.
    font.setLetterSpacing(QFont::AbsoluteSpacing, 1.0 / 64);
    return font;
}

/// The pieces that differ from the paragraph's own font.
QList<QTextLayout::FormatRange> rangesOf(const RichText& text, PrintSize size)
{
    QList<QTextLayout::FormatRange> ranges;
    int start = 0;
    for (const TextRun& run : text) {
        const int length = static_cast<int>(run.text.size());
        QTextLayout::FormatRange range;
        range.start = start;
        range.length = length;
        if (run.bold) {
            range.format.setFontWeight(QFont::Bold);
        }
        if (run.small) {
            range.format.setProperty(QTextFormat::FontPixelSize, pixelsOf(PrintText::small, size));
        }
        if (run.bold || run.small) {
            ranges.append(range);
        }
        start += length;
    }
    return ranges;
}

std::shared_ptr<QTextLayout> layOut(const RichText& text, PrintSize size, const QFont& font,
                                    double width, Qt::Alignment alignment)
{
    auto layout = std::make_shared<QTextLayout>(plainText(text), font);
    QTextOption option(alignment);
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    option.setUseDesignMetrics(true);
    layout->setTextOption(option);
    layout->setFormats(rangesOf(text, size));
    layout->setCacheEnabled(true);
    layout->beginLayout();
    for (QTextLine line = layout->createLine(); line.isValid(); line = layout->createLine()) {
        line.setLineWidth(width);
        line.setPosition({0, 0});
    }
    layout->endLayout();
    return layout;
}

} // namespace

TextBlock::TextBlock(const RichText& text, PrintText style, PrintSize size, double width,
                     Qt::Alignment alignment)
    : m_lineHeight(pointSize(style, size).line)
{
    const QFont font = fontFor(style, size);
    const QFontMetricsF metrics(font);
    const double ascent = metrics.ascent() / unitsPerPoint;
    const double descent = metrics.descent() / unitsPerPoint;
    m_baseline = (m_lineHeight - ascent - descent) / 2 + ascent;
    m_layout = layOut(text, size, font, std::max(width, 1.0) * unitsPerPoint, alignment);
}

int TextBlock::lineCount() const
{
    return m_layout->lineCount();
}

double TextBlock::naturalWidth() const
{
    double widest = 0;
    for (int i = 0; i < lineCount(); ++i) {
        widest = std::max(widest, m_layout->lineAt(i).naturalTextWidth());
    }
    return widest / unitsPerPoint;
}

QString TextBlock::lineText(int line) const
{
    const QTextLine textLine = m_layout->lineAt(line);
    return m_layout->text().mid(textLine.textStart(), textLine.textLength()).trimmed();
}

void TextBlock::drawLine(QPainter& painter, int line, QPointF topLeft) const
{
    const QTextLine textLine = m_layout->lineAt(line);
    painter.save();
    painter.translate(topLeft + QPointF(0, m_baseline));
    painter.scale(1 / unitsPerPoint, 1 / unitsPerPoint);
    textLine.draw(&painter, {0, -textLine.ascent()});
    painter.restore();
}

void TextBlock::draw(QPainter& painter, QPointF topLeft) const
{
    for (int i = 0; i < lineCount(); ++i) {
        drawLine(painter, i, topLeft + QPointF(0, i * m_lineHeight));
    }
}

double widthOf(const RichText& text, PrintText style, PrintSize size)
{
    return TextBlock(text, style, size, anyWidth).naturalWidth();
}

} // namespace quadrille::app
