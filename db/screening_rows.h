// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of screenings, for their repository, for who must pass the gate (plans, sessions in the
// clinic) and for the caseload.
#pragma once

#include "db/store.h"

#include "core/calendar.h"
#include "core/plan.h"
#include "core/screening.h"
#include "core/screening_gate.h"

#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace quadrille::db
{

/// The practice preference (db/practice_preferences.h) that says for how many months a signature
/// holds; a whole number.
inline constexpr const char* screeningValidityName = "screening_valid_months";

/// All of a course with their parts, the earliest first.
std::vector<Screening> readScreenings(Reading& reading, CourseId course);
std::optional<Screening> readLatestScreening(Reading& reading, CourseId course);
std::vector<ScreeningOverride> readOverrides(Reading& reading, ScreeningId screening);
/// What the practice says, else usualValidity. Error badFormat when it says no whole number from
/// leastValidity to mostValidity.
std::chrono::months readValidity(Reading& reading);

/// Everything the gate asks of a course, for the sites of these blocks.
GateFacts readGateFacts(Reading& reading, CourseId course, const std::vector<Block>& blocks,
                        Date today);
/// Failure of passGate() while the gate is shut for these blocks.
void requireOpenGate(Reading& reading, CourseId course, const std::vector<Block>& blocks,
                     Date today);

} // namespace quadrille::db
