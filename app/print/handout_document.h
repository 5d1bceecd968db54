// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/print/handout_words.h"
#include "app/print/page_edges.h"
#include "app/print/paper_format.h"
#include "app/print/strips.h"

#include <QSizeF>
#include <QString>

#include <vector>

namespace quadrille::app
{

/// A strip with its place on a page.
struct PlacedStrip {
    Strip strip;
    double top = 0; ///< points from the upper edge of the paper
};

/// A handout on paper: the pages of one format and size of print. A value; paintPage() draws it.
class HandoutDocument
{
public:
    HandoutDocument(const HandoutText& text, PaperChoice choice);

    int pageCount() const { return static_cast<int>(m_pages.size()); }
    /// `page` counts from 0.
    const std::vector<PlacedStrip>& page(int page) const
    {
        return m_pages[static_cast<std::size_t>(page)];
    }
    const PageEdges& edges() const { return m_edges; }
    PaperChoice choice() const { return m_choice; }
    /// Points.
    QSizeF pageSize() const { return paperSize(m_choice.format); }
    /// Names no person: files are handed on.
    const QString& title() const { return m_title; }
    /// What a page says, line by line, for reading out.
    QString pageText(int page) const;

private:
    PaperChoice m_choice;
    QString m_title;
    PageEdges m_edges;
    std::vector<std::vector<PlacedStrip>> m_pages;
};

} // namespace quadrille::app
