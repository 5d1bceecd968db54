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

std::vector<PlacedStrip> place(const std::vector<Strip>& strips, PageRange range, double top)
{
    std::vector<PlacedStrip> placed;
    for (std::size_t i = range.first; i < range.last; ++i) {
        if (i > range.first) {
            top += strips[i].size.spaceBefore;
        }
        placed.push_back({strips[i], top});
        top += strips[i].size.height;
    }
    return placed;
}

} // namespace

HandoutDocument::HandoutDocument(const HandoutText& text, PaperChoice choice)
    : m_choice(choice)
    , m_title(text.documentTitle)
    , m_edges(text, choice)
{
    const TextColumn column{m_edges.left(), m_edges.width(),
                            m_edges.bodyBottom() - m_edges.bodyTop(), m_edges.marginLine()};
    const std::vector<Strip> strips = stripsOf(text, choice.size, column);
    for (const PageRange range : breakPages(heightsOf(strips), column.height)) {
        m_pages.push_back(place(strips, range, m_edges.bodyTop()));
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
