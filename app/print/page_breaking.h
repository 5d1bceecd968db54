// SPDX-License-Identifier: GPL-3.0-or-later
// Where pages end. Pure: heights in, ranges out; knows nothing of text, paper or printers.
#pragma once

#include <cstddef>
#include <vector>

namespace quadrille::app
{

/// Whether a page may end below a strip.
enum class BreakBelow {
    free,  ///< a good place
    avoid, ///< inside something that is better kept on one page
    never, ///< would leave a heading or a single line alone; only when nothing else is possible
};

/// One indivisible strip of a page: a line of text, a row, a picture.
struct StripHeight {
    double height = 0.0;      ///< any unit, the same for all and for the page
    double spaceBefore = 0.0; ///< left away at the top of a page
    BreakBelow below = BreakBelow::free;
    bool startsPage = false;
    /// Taken above a strip with which a page begins in the middle of something, for a line that
    /// says of what.
    double continued = 0.0;
};

/// Strips first … last−1 stand on one page.
struct PageRange {
    std::size_t first = 0;
    std::size_t last = 0;
    friend bool operator==(const PageRange&, const PageRange&) = default;
};

/// Whether the page that begins with strip `first` goes on with what an earlier page began.
bool goesOn(const std::vector<StripHeight>& strips, std::size_t first);

/// Fills pages of `pageHeight` from the top. A page ends at its last free place; without one at its
/// last place to avoid, and without that wherever it is full. Every strip stands on exactly one
/// page, in order; a strip higher than a page gets a page of its own.
std::vector<PageRange> breakPages(const std::vector<StripHeight>& strips, double pageHeight);

} // namespace quadrille::app
