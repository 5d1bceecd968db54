// SPDX-License-Identifier: GPL-3.0-or-later
// Repository of what happens in a course beside plans and diary: pauses, follow-ups, counter
// readings, receipts of a diary, documents printed. Each kind has the same
// three acts: all of a course (withdrawn ones too, the earliest first), add, and change over the
// version that was read. Nothing is deleted; an entry made by mistake is changed to withdrawn.
// Errors of a change: changedElsewhere, notFound, refused (a record keeps its course), outOfRange.
#pragma once

#include "db/store.h"

#include "core/course_state.h"
#include "core/diary.h"
#include "core/follow_up.h"

#include <vector>

namespace quadrille::db
{

std::vector<Pause> pausesOf(Reading& reading, CourseId course);
/// Error refused when it overlaps another pause of the course.
PauseId addPause(Writing& writing, const Pause& pause);
void changePause(Writing& writing, const Pause& pause);

std::vector<FollowUp> followUpsOf(Reading& reading, CourseId course);
FollowUpId addFollowUp(Writing& writing, const FollowUp& followUp);
void changeFollowUp(Writing& writing, const FollowUp& followUp);

std::vector<CounterReading> counterReadingsOf(Reading& reading, CourseId course);
CounterReadingId addCounterReading(Writing& writing, const CounterReading& counter);
void changeCounterReading(Writing& writing, const CounterReading& counter);

std::vector<DiaryReceived> receiptsOf(Reading& reading, CourseId course);
DiaryReceivedId addReceipt(Writing& writing, const DiaryReceived& receipt);
void changeReceipt(Writing& writing, const DiaryReceived& receipt);
/// The last day up to which the diary is known; nothing before the first receipt.
std::optional<Date> diaryReceivedThrough(Reading& reading, CourseId course);

std::vector<PrintedDocument> printedDocumentsOf(Reading& reading, CourseId course);
/// Who and when are the author's and the change's own.
PrintedDocumentId addPrintedDocument(Writing& writing, const PrintedDocument& document);

} // namespace quadrille::db
