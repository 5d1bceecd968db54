// SPDX-License-Identifier: GPL-3.0-or-later
// A file system without second names (hard links), as memory sticks have it, for this process.
#pragma once

namespace quadrille::tests
{

/// While it lives, link(2) fails as it does there.
class NoSecondNames
{
public:
    NoSecondNames();
    ~NoSecondNames();
    NoSecondNames(const NoSecondNames&) = delete;
    NoSecondNames& operator=(const NoSecondNames&) = delete;
};

} // namespace quadrille::tests
