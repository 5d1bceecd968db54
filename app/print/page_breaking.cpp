// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/page_breaking.h"

#include <algorithm>

namespace quadrille::app
{

namespace
{

/// Heights are sums of floating-point line heights.
constexpr double tolerance = 1e-6;

/// One past the last strip that fits below `first`; at least one strip.
std::size_t fillPage(const std::vector<StripHeight>& strips, std::size_t first, double pageHeight)
{
    double used = strips[first].height + (goesOn(strips, first) ? strips[first].continued : 0.0);
    std::size_t end = first + 1;
    while (end < strips.size() && !strips[end].startsPage) {
        used += strips[end].spaceBefore + strips[end].height;
        if (used > pageHeight + tolerance) {
            break;
        }
        ++end;
    }
    return end;
}

/// The last place in first … end at which a page may end with at most `worst`; `first` when there
/// is none.
std::size_t lastPlace(const std::vector<StripHeight>& strips, std::size_t first, std::size_t end,
                      BreakBelow worst)
{
    while (end > first && strips[end - 1].below > worst) {
        --end;
    }
    return end;
}

} // namespace

bool goesOn(const std::vector<StripHeight>& strips, std::size_t first)
{
    return first > 0 && !strips[first].startsPage;
}

std::vector<PageRange> breakPages(const std::vector<StripHeight>& strips, double pageHeight)
{
    std::vector<PageRange> pages;
    std::size_t first = 0;
    while (first < strips.size()) {
        std::size_t end = fillPage(strips, first, pageHeight);
        const bool full = end < strips.size() && !strips[end].startsPage;
        if (full) {
            for (const BreakBelow worst : {BreakBelow::free, BreakBelow::avoid}) {
                const std::size_t place = lastPlace(strips, first, end, worst);
                if (place > first) {
                    end = place;
                    break;
                }
            }
        }
        pages.push_back({first, end});
        first = end;
    }
    return pages;
}

} // namespace quadrille::app
