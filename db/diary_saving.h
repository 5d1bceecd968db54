// SPDX-License-Identifier: GPL-3.0-or-later
// A diary that was copied goes into the file in one change, beside whatever somebody else saved of
// it in the meantime.
#pragma once

#include "db/store.h"

#include "core/written_diary.h"

#include <vector>

namespace quadrille::db
{

/// What came of a save.
struct DiarySaving {
    /// Parts that somebody else changed too, since `base` was read, and to something else. Then
    /// nothing was saved.
    std::vector<DiaryClash> clashes = {};
    WrittenDiary theirs; ///< as it was in the file before this save
    WrittenDiary saved;  ///< as it is there now
    bool isSaved() const { return clashes.empty(); }
};

/// Saves what differs between `base` and `mine`; other changes in the file stay. Entries are added,
/// corrected over the version they have, and withdrawn where they were emptied; the same with days
/// and with what was received. `today`: the day on which the diary came. Errors: notFound, refused,
/// outOfRange.
DiarySaving saveDiary(Writing& writing, const Course& course, const WrittenDiary& base,
                      const WrittenDiary& mine, Date today);

} // namespace quadrille::db
