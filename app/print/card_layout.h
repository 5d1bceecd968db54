// SPDX-License-Identifier: GPL-3.0-or-later
// The programme card as strips: what the patient keeps beside the stimulator.
#pragma once

#include "app/print/handout_words.h"
#include "app/print/strips.h"

#include <QSizeF>

#include <vector>

namespace quadrille::app
{

/// Where text stands on a page.
struct TextColumn {
    double left = 0;
    double width = 0;
    double height = 0; ///< of one page
    double marginLine = 0;
};

/// Title, big numbers, settings and steps. All on one page where that is possible; else the
/// settings move to a page of their own, and what is longer than a page flows on.
std::vector<Strip> cardStrips(const CardText& card, PrintSize size, const TextColumn& column);

} // namespace quadrille::app
