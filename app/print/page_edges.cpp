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
/// Wider than any page number that is likely; the number itself is never cut.
constexpr int manyPages = 88;

double textWidth(PaperChoice choice)
{
    const PageFrame frame = pageFrame(choice.size);
    return paperSize(choice.format).width() - frame.left - frame.right;
}

double numberWidth(PrintSize size)
{
    return widthOf(plain(HandoutWords::pageOf(manyPages, manyPages)), PrintText::headAndFoot, size);
}

} // namespace

PageEdges::PageEdges(const HandoutText& text, PaperChoice choice)
    : m_choice(choice)
    , m_paper(paperSize(choice.format))
    , m_frame(pageFrame(choice.size))
    , m_practice(plain(text.practice), PrintText::headAndFoot, choice.size,
                 (textWidth(choice) - between) * 0.6)
    , m_patient(bold(text.patientName), PrintText::headAndFoot, choice.size,
                (textWidth(choice) - between) * 0.4, Qt::AlignTrailing)
    , m_printed(plain(text.printed), PrintText::headAndFoot, choice.size,
                textWidth(choice) - numberWidth(choice.size) - between)
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

TextBlock PageEdges::pageNumber(int page, int pages) const
{
    return {plain(HandoutWords::pageOf(page + 1, pages)), PrintText::headAndFoot, m_choice.size,
            numberWidth(m_choice.size) + 1, Qt::AlignTrailing};
}

void PageEdges::draw(QPainter& painter, int page, int pages) const
{
    const Tokens tokens = printTokens();
    painter.setPen(tokens.ink2);
    m_practice.draw(painter, {left(), m_frame.top});
    m_patient.draw(painter, {left() + (width() - between) * 0.6 + between, m_frame.top});
    painter.fillRect(QRectF(left(), footTop() - belowFootRule - 0.75, width(), 0.75), tokens.line);
    m_printed.draw(painter, {left(), footTop()});
    const TextBlock number = pageNumber(page, pages);
    number.draw(painter, {left() + width() - numberWidth(m_choice.size) - 1, footTop()});
    painter.fillRect(QRectF(marginLine() - 0.4, m_frame.top, 0.8,
                            m_paper.height() - m_frame.top - m_frame.bottom),
                     tokens.margin);
    painter.setPen(tokens.ink);
}

} // namespace quadrille::app
