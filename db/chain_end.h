// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>

namespace quadrille::db
{

/// Where the chain over the change record ends.
struct ChainEnd {
    std::int64_t last = 0; ///< key of the last row; 0 while there is none
    std::string chain;
};

} // namespace quadrille::db
