// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/house_settings.h"

#include <cassert>

namespace quadrille
{

HouseSettings houseSettingsFrom(const Block& block, const Stimulator& unit)
{
    assert(!block.sites.empty());
    HouseSettings kept;
    kept.muscle = block.sites.front().muscle;
    kept.rampHabit = unit.rampHabit;
    kept.settings = block.sites.front().settings;
    kept.settings.amplitude = {};
    kept.sessionsPerDay = block.sessionsPerDay;
    kept.daysPerWeek = daysPerWeek(block);
    kept.weeks = block.weeks;
    return kept;
}

} // namespace quadrille
