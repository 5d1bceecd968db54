// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/print/paper_format.h"

#include <array>

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
constexpr std::array<Spacing, 4> spacings(PrintSize size)
{
    if (size == PrintSize::large) {
        return {{{26, 24, 4.5, 9, 22}, {22, 20, 3.5, 7, 18}, {18, 16, 2.5, 5, 14}, {14, 12, 1.5, 4, 11}}};
    }
    return {{{20, 17, 3.5, 6, 16}, {17, 14, 2.75, 5, 13}, {14, 11, 2, 3.5, 10}, {11, 8, 1.25, 2, 7}}};
}

} // namespace quadrille::app
