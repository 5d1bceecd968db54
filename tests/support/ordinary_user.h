// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <unistd.h>

namespace quadrille::tests
{

/// Modes of files bind everybody but root: a test that needs them forks, and as root goes on as
/// somebody else. False where that is not allowed.
inline bool becomeAnOrdinaryUser()
{
    constexpr uid_t nobody = 65534;
    return geteuid() != 0 || (setgid(nobody) == 0 && setuid(nobody) == 0);
}

} // namespace quadrille::tests
