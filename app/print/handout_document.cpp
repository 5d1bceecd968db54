// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/handout_document.h"

#include "app/print/card_layout.h"
#include "app/print/page_breaking.h"
#include "app/print/safety_layout.h"

#include <QStringList>

#include <utility>

namespace quadrille::app
{

namespace
{

/// A page number of one digit.
constexpr int usualPages = 9;

std::vector<Strip> stripsOf(const HandoutText& text, PrintSize size, const TextColumn& column)
{
    std::vector<Strip> all;
    const auto appendOnNewPage = [&](std::vector<Strip> strips) {
        if (!strips.empty()) {
            strips.front().size.startsPage = true;
        }
        append(all, std::move(strips));
    };
    for (const CardText& card : text.cards) {
        appendOnNewPage(cardStrips(card, size, column));
    }
    appendOnNewPage(safetyStrips(text.safety, size, column));
    return all;
}

std::vector<PlacedStrip> place(const std::vector<Strip>& strips, PageRange range, bool continued,
                               double top)
{
    std::vector<PlacedStrip> placed;
    const Strip& begins = strips[range.first];
    if (continued) {
        double lineTop = top;
        for (const LineAbove& line : begins.continued) {
            Strip strip;
            strip.size.height = line.height;
            strip.text = line.text;
            strip.draw = line.draw;
            placed.push_back({strip, lineTop});
            lineTop += line.height;
        }
        top += begins.size.continued;
    }
    for (std::size_t i = range.first; i < range.last; ++i) {
        if (i > range.first) {
            top += strips[i].size.spaceBefore;
        }
        placed.push_back({strips[i], top});
        top += strips[i].size.height;
    }
    return placed;
}

std::vector<std::vector<PlacedStrip>> pagesWithin(const HandoutText& text, PrintSize size,
                                                  const PageEdges& edges)
{
    const TextColumn column{edges.left(), edges.width(), edges.bodyBottom() - edges.bodyTop(),
                            edges.marginLine()};
    const std::vector<Strip> strips = stripsOf(text, size, column);
    const std::vector<StripHeight> heights = heightsOf(strips);
    std::vector<std::vector<PlacedStrip>> pages;
    for (const PageRange range : breakPages(heights, column.height)) {
        pages.push_back(place(strips, range, goesOn(heights, range.first), edges.bodyTop()));
    }
    return pages;
}

} // namespace

HandoutDocument::HandoutDocument(const HandoutText& text, PaperChoice choice)
    : m_choice(choice)
    , m_title(text.documentTitle)
    , m_edges(text, choice, usualPages)
    , m_pages(pagesWithin(text, choice.size, m_edges))
{
    if (pageCount() > usualPages) {
        m_edges = PageEdges(text, choice, pageCount());
        m_pages = pagesWithin(text, choice.size, m_edges);
    }
}

QString HandoutDocument::pageText(int page) const
{
    QStringList lines;
    for (const PlacedStrip& placed : m_pages[static_cast<std::size_t>(page)]) {
        if (!placed.strip.text.isEmpty()) {
            lines.append(placed.strip.text);
        }
    }
    return lines.join(QLatin1Char('\n'));
}

} // namespace quadrille::app
