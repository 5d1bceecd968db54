// SPDX-License-Identifier: GPL-3.0-or-later
// Read by moc before each header: the moc of Qt 6.4 cannot parse <concepts> (behind <compare>)
// unless the library's configuration macros are known already.
#pragma once

#include <cstddef>
