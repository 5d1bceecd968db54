// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of the diary: one entry for each course, day and session number, and what belongs to
// the day. A correction goes over the version that was read and keeps the old value in the change
// record.
#pragma once

#include "db/store.h"

#include "core/diary.h"

#include <vector>

namespace quadrille::db
{

/// Entries from a day to a day, both included, in the order of days and session numbers; withdrawn
/// ones too.
std::vector<DiaryEntry> diaryEntriesOf(Reading& reading, CourseId course, Date from, Date to);
/// Who entered it and when are the author's and the change's own. Error notUnique when the session
/// has an entry.
DiaryEntryId addDiaryEntry(Writing& writing, const DiaryEntry& entry);
/// Errors: changedElsewhere, notFound, refused, notUnique, outOfRange.
void correctDiaryEntry(Writing& writing, const DiaryEntry& entry);

std::vector<DiaryDay> diaryDaysOf(Reading& reading, CourseId course, Date from, Date to);
/// A day that is new (no id) or corrected.
DiaryDayId saveDiaryDay(Writing& writing, const DiaryDay& day);

} // namespace quadrille::db
