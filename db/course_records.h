// SPDX-License-Identifier: GPL-3.0-or-later
// What the adherence of a course rests on, gathered from the repositories in one view.
#pragma once

#include "db/caseload_query.h"
#include "db/store.h"

#include "core/day_sites.h"
#include "core/lived_days.h"

#include <vector>

namespace quadrille::db
{

/// Plans, pauses, diary, receipts and follow-ups of a stored course.
CourseRecords courseRecords(Reading& reading, const Course& course);

/// The keys of the sites of all plans of a course, in the order of courseRecords().
SiteKeys siteKeysOf(Reading& reading, CourseId course);

/// Adds pauses, receipts and the diary of the last weeks shown to rows of the caseload: up to
/// `today`, or to the end of an ended course.
void addRecentDiary(Reading& reading, std::vector<CaseloadRow>& rows, Date today);

/// The practice's thresholds, preferences "session_done_percent" and "week_adherence_percent"; the
/// usual ones until they are set. Error badFormat when one is no whole number from 1 to 100.
AdherenceRules adherenceRules(Reading& reading);

} // namespace quadrille::db
