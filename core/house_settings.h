// SPDX-License-Identifier: GPL-3.0-or-later
// Settings that the practice keeps under a name, to start from again.
#pragma once

#include "core/ids.h"
#include "core/plan.h"
#include "core/stimulator.h"

#include <optional>
#include <string>

namespace quadrille
{

struct HouseSettings;
using HouseSettingsId = Id<HouseSettings>;

/// A block without its patient: no amplitudes, no pads, no words for one person. What it says is
/// never changed, only what it is called.
struct HouseSettings {
    std::optional<HouseSettingsId> id = std::nullopt;
    std::string name;   ///< its own among those that are in use
    std::string muscle; ///< what finds them; may be empty, as the next two
    std::string condition;
    std::string note;
    RampHabit rampHabit = RampHabit::includedInOnTime; ///< how the on time is meant
    Settings settings;                                 ///< amplitude not known
    int sessionsPerDay = 1;                            ///< 1 … 6
    int daysPerWeek = 5;                               ///< 1 … 7
    int weeks = 4;                                     ///< 1 … 52
    bool withdrawn = false;
    Version version = 1;
    friend bool operator==(const HouseSettings&, const HouseSettings&) = default;
};

/// What a block asks for, to be kept: the settings of its first site, its days and weeks. Needs a
/// site.
HouseSettings houseSettingsFrom(const Block& block, const Stimulator& unit);

} // namespace quadrille
