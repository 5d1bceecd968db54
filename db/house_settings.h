// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of the settings that the practice keeps. Nothing is deleted: settings that nobody
// shall start from any more are withdrawn, and their figures are never changed.
#pragma once

#include "db/store.h"

#include "core/house_settings.h"

#include <vector>

namespace quadrille::db
{

/// Those in use, by name.
std::vector<HouseSettings> houseSettings(Reading& reading);
/// Errors: notFilled without a name, notUnique, outOfRange.
HouseSettingsId addHouseSettings(Writing& writing, const HouseSettings& kept);
/// Saves name, muscle, condition, note and whether they are withdrawn. Errors: notFilled,
/// notUnique, changedElsewhere, notFound; refused where the figures differ.
void changeHouseSettings(Writing& writing, const HouseSettings& kept);

} // namespace quadrille::db
