// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/page_edges.h"

#include <QPainter>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr double belowFootRule = 5;
constexpr double between = 14;
double textWidth(PaperChoice choice)
{
    const PageFrame frame = pageFrame(choice.size);
    return paperSize(choice.format).width() - frame.left - frame.right;
}

/// A number of as many digits, all of them as wide as any.
int widest(int mostPages)
{
    int widest = 8;
    for (int rest = mostPages / 10; rest > 0; rest /= 10) {
        widest = 10 * widest + 8;
    }
    return widest;
}

double numberWidth(int mostPages, PrintSize size)
{
    const int number = widest(mostPages);
    return widthOf(plain(HandoutWords::pageOf(number, number)), PrintText::headAndFoot, size);
}

/// The parts with points between them; where a line has to end between two, the point goes.
QString inLines(const QStringList& parts, double width, PrintSize size)
{
    QString lines;
    QString line;
    for (const QString& part : parts) {
        const QString longer = line.isEmpty() ? part : line + QStringLiteral(" · ") + part;
        if (line.isEmpty() || widthOf(plain(longer), PrintText::headAndFoot, size) <= width) {
            line = longer;
            continue;
        }
        lines += line + QChar(QChar::LineSeparator);
        line = part;
    }
    return lines + line;
}

} // namespace

PageEdges::PageEdges(const HandoutText& text, PaperChoice choice, int mostPages)
    : m_choice(choice)
    , m_paper(paperSize(choice.format))
    , m_frame(pageFrame(choice.size))
    , m_numberWidth(numberWidth(mostPages, choice.size))
    , m_practice(plain(text.practice), PrintText::headAndFoot, choice.size,
                 (textWidth(choice) - between) * 0.6)
    , m_patient(bold(text.patientName), PrintText::headAndFoot, choice.size,
                (textWidth(choice) - between) * 0.4, Qt::AlignTrailing)
    , m_printed(
          plain(inLines(text.printed, textWidth(choice) - m_numberWidth - between, choice.size)),
          PrintText::headAndFoot, choice.size, textWidth(choice) - m_numberWidth - between)
{
}

double PageEdges::bodyTop() const
{
    return m_frame.top + std::max(m_practice.height(), m_patient.height()) + m_frame.headGap;
}

double PageEdges::footTop() const
{
    return m_paper.height() - m_frame.bottom - m_printed.height();
}

double PageEdges::bodyBottom() const
{
    return footTop() - belowFootRule - m_frame.footGap;
}

void PageEdges::draw(QPainter& painter, int page, int pages) const
{
    const Tokens tokens = printTokens();
    painter.setPen(tokens.ink2);
    m_practice.draw(painter, {left(), m_frame.top});
    m_patient.draw(painter, {left() + (width() - between) * 0.6 + between, m_frame.top});
    painter.fillRect(QRectF(left(), footTop() - belowFootRule - 0.75, width(), 0.75), tokens.line);
    m_printed.draw(painter, {left(), footTop()});
    const TextBlock number(plain(HandoutWords::pageOf(page + 1, pages)), PrintText::headAndFoot,
                           m_choice.size, m_numberWidth + 1, Qt::AlignTrailing);
    number.draw(painter, {left() + width() - m_numberWidth - 1, footTop()});
    painter.fillRect(QRectF(marginLine() - 0.4, m_frame.top, 0.8,
                            m_paper.height() - m_frame.top - m_frame.bottom),
                     tokens.margin);
    painter.setPen(tokens.ink);
}

} // namespace quadrille::app
