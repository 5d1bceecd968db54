// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/print/paper_format.h"
#include "app/print/strips.h"

#include <array>
#include <utility>
#include <vector>

namespace quadrille::app
{

/// White space of a page in points. A page that does not fit is set tighter before it is broken;
/// type never shrinks.
struct Spacing {
    double section = 20; ///< between the parts of a page
    double step = 17;    ///< between steps
    double row = 3.5;    ///< above and below the text of a row
    double item = 6;     ///< between the items of a list
    double heading = 16; ///< above a heading
};

/// From roomy to tight.
constexpr std::array<Spacing, 5> spacings(PrintSize size)
{
    if (size == PrintSize::large) {
        return {{{26, 24, 4.5, 9, 22},
                 {22, 20, 3.5, 7, 18},
                 {18, 16, 2.5, 5, 14},
                 {14, 12, 1.5, 4, 11},
                 {11, 9, 1, 3, 9}}};
    }
    return {{{20, 17, 3.5, 6, 16},
             {17, 14, 2.75, 5, 13},
             {14, 11, 2, 3.5, 10},
             {11, 8, 1.25, 2, 7},
             {9, 6.5, 0.75, 1.5, 6}}};
}

/// What `set` makes of the roomiest spacing with which it takes the fewest pages.
template <class Set>
std::vector<Strip> onFewestPages(PrintSize size, double pageHeight, Set&& set)
{
    std::vector<Strip> best;
    std::size_t fewest = 0;
    for (const Spacing& spacing : spacings(size)) {
        std::vector<Strip> strips = set(spacing);
        const std::size_t pages = pagesOf(strips, pageHeight);
        if (fewest == 0 || pages < fewest) {
            fewest = pages;
            best = std::move(strips);
        }
        if (fewest == 1) {
            break;
        }
    }
    return best;
}

} // namespace quadrille::app
