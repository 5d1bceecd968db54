// SPDX-License-Identifier: GPL-3.0-or-later
// A diary that comes as a file: what it is held against, and taking it over whole or not at all.
#pragma once

#include "db/store.h"

#include "core/diary_import.h"

#include <cstddef>
#include <functional>

namespace quadrille::db
{

/// All that is on record of a course and the course itself, read in one view. Error notFound.
DiaryOnFile diaryOnFile(Reading& reading, CourseId id, Date today);

/// Asked after each record with how many are saved so far; false stops.
using GoOn = std::function<bool(std::size_t saved)>;

/// Saves an import with its rows in the change record. Errors: notUnique or changedElsewhere where
/// the diary was changed since it was read, refused where `goOn` stopped it; nothing is saved then,
/// as with any other error.
void takeOverDiary(Writing& writing, const DiaryTakeOver& taken, const GoOn& goOn = {});

} // namespace quadrille::db
