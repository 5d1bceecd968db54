// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"

#include <vector>

namespace quadrille
{

/// Which of the automatic copies stay (common practice, no source): the last of each of the last 7
/// days, of each of the last 4 weeks (Monday to Sunday) and of each of the last 12 months, today's
/// day, week and month included. Copies dated after `today` stay too: a clock that was wrong is no
/// reason to lose one. The latest copy always stays.
/// `copies` in any order, a day may stand several times. One flag for each, in the same order.
std::vector<bool> copiesToKeep(const std::vector<Moment>& copies, Date today);

} // namespace quadrille
