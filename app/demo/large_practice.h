// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"
#include "core/result.h"

#include <QString>

#include <functional>

namespace quadrille::app
{

/// Entries in the diary of each patient of a large practice.
inline constexpr int entriesOfEach = 50;

/// Writes a made-up practice of so many patients, each with one course, one plan and 50 diary
/// entries; one in fifty courses is running, the others have ended. For measurements: names are put
/// together from syllables, and the same day gives the same practice. `progress` is told how many
/// patients are written. Never over a file that is there.
Result<void> writeLargePractice(const QString& file, Date today, int patients,
                                const std::function<void(int)>& progress);

} // namespace quadrille::app
