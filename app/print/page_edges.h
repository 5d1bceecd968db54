// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/print/handout_words.h"
#include "app/print/paper_format.h"
#include "app/print/text_block.h"

class QPainter;

namespace quadrille::app
{

/// What stands on every page of a handout around its text: the head, the margin line
/// and the foot. Takes as many lines as its texts need and leaves the rest to the page.
class PageEdges
{
public:
    /// Leaves room in the foot for the numbers of up to `mostPages` pages.
    PageEdges(const HandoutText& text, PaperChoice choice, int mostPages);

    /// Points from the upper edge of the paper.
    double bodyTop() const;
    double bodyBottom() const;
    /// Text column, points from the left edge.
    double left() const { return m_frame.left; }
    double width() const { return m_paper.width() - m_frame.left - m_frame.right; }
    double marginLine() const { return m_frame.marginLine; }
    double framePadding() const { return m_frame.framePadding; }

    /// What stands in the foot beside the page number.
    const TextBlock& foot() const { return m_printed; }

    /// `page` counts from 0.
    void draw(QPainter& painter, int page, int pages) const;

private:
    double footTop() const;

    PaperChoice m_choice;
    QSizeF m_paper;
    PageFrame m_frame;
    double m_numberWidth;
    TextBlock m_practice;
    TextBlock m_patient;
    TextBlock m_printed;
};

} // namespace quadrille::app
