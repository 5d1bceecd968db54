// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of screenings. A signed screening and a reason for going ahead are never changed, here
// or in the database (triggers refuse both); a change makes the next, unsigned screening.
#pragma once

#include "db/screening_rows.h"
#include "db/store.h"

#include "core/plan.h"
#include "core/screening.h"
#include "core/screening_gate.h"

#include <chrono>
#include <optional>
#include <vector>

namespace quadrille::db
{

/// All of a course, the earliest first.
std::vector<Screening> screeningsOf(Reading& reading, CourseId course);
std::optional<Screening> latestScreeningOf(Reading& reading, CourseId course);
/// Adds an unsigned screening; it gets the course's next number. Error refused while another of the
/// course is unsigned.
ScreeningId addScreening(Writing& writing, const Screening& screening);
/// Changes the answers, the skin and, of a screening that is not signed, its questions. Errors:
/// changedElsewhere, notFound, refused.
void changeScreening(Writing& writing, const Screening& screening);
/// Signs what is stored under the version that was read. Error refused while gapsOf() names
/// anything; changedElsewhere.
void signScreening(Writing& writing, ScreeningId screening, Version read,
                   PractitionerId practitioner, Date day);

std::vector<ScreeningOverride> overridesOf(Reading& reading, ScreeningId screening);
/// Who and when are filled in: `practitioner` names who answers for it.
ScreeningOverrideId addOverride(Writing& writing, const ScreeningOverride& reason);

/// How long a signature holds in this practice: what its preference screeningValidityName says,
/// else usualValidity. Error badFormat when it says no whole number from leastValidity to
/// mostValidity.
std::chrono::months screeningValidity(Reading& reading);

/// What the gate asks of a course for the sites of these blocks, and its verdict. issuePlan() asks
/// by itself.
GateFacts gateFacts(Reading& reading, CourseId course, const std::vector<Block>& blocks,
                    Date today);
ScreeningGate gateOf(Reading& reading, CourseId course, const std::vector<Block>& blocks,
                     Date today);

} // namespace quadrille::db
