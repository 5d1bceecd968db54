// SPDX-License-Identifier: GPL-3.0-or-later
// What each week of a course asks for, and what the diary says was delivered.
#pragma once

#include "core/lived_days.h"

#include <optional>
#include <vector>

namespace quadrille
{

/// One course week. Pauses and the plan in force on each day are taken into account.
struct WeekDose {
    CourseWeek week;
    /// Nothing where the settings of a block in force cannot run.
    std::optional<SittingDose> prescribed = SittingDose();
    /// Reported sessions, extra ones too, each at most a whole sitting of the block in force on its
    /// day; contractions as the patient reported them, else from the minutes. A session on a day
    /// without a block has no settings and counts nothing. Nothing while no session of the week is
    /// known, and where the settings cannot run.
    std::optional<SittingDose> delivered = std::nullopt;
    /// The highest that a site of the week's blocks may be set to, see doseAmplitude().
    std::optional<Amplitude> planned = std::nullopt;
    std::optional<Amplitude> reported = std::nullopt; ///< the highest in the diary
};

/// From course week 1 to the last week in which a block is in force or something was reported.
/// `asOf` as in courseAsLived().
std::vector<WeekDose> weekDoses(const CourseRecords& records, const AdherenceRules& rules,
                                Date asOf);

} // namespace quadrille
