// SPDX-License-Identifier: GPL-3.0-or-later
// link(2) as the tests' program has it stands before the system's own.
#include "tests/db/second_names.h"

#include <cerrno>
#include <fcntl.h>
#include <unistd.h>

namespace
{

bool isWithout = false;

} // namespace

namespace quadrille::tests
{

NoSecondNames::NoSecondNames()
{
    isWithout = true;
}

NoSecondNames::~NoSecondNames()
{
    isWithout = false;
}

} // namespace quadrille::tests

extern "C" int link(const char* from, const char* to) noexcept
{
    if (isWithout) {
        errno = EPERM;
        return -1;
    }
    return ::linkat(AT_FDCWD, from, AT_FDCWD, to, 0);
}
