// SPDX-License-Identifier: GPL-3.0-or-later
// What the columns of diary files from one source mean, remembered under a name by the practice.
#pragma once

#include "db/store.h"

#include "core/diary_columns.h"
#include "core/diary_dates.h"
#include "core/ids.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace quadrille::db
{

struct DiaryMapping {
    std::string name;
    std::optional<char> separator = std::nullopt; ///< between cells; nothing: recognised
    std::optional<DateOrder> dateOrder = std::nullopt;
    std::optional<DurationForm> durationForm = std::nullopt;
    /// Headings as the file writes them, and what each holds.
    std::vector<std::pair<std::string, ColumnMeaning>> columns = {};
    friend bool operator==(const DiaryMapping&, const DiaryMapping&) = default;
};

/// All that a practice remembers.
struct RememberedMappings {
    std::vector<DiaryMapping> mappings = {}; ///< by name
    Version version = 0;                     ///< 0: nothing was remembered yet
    friend bool operator==(const RememberedMappings&, const RememberedMappings&) = default;
};

/// Error badFormat when anything in the practice's preference "diary_import_mappings" can't be
/// read; nothing of it is passed over.
RememberedMappings diaryMappings(Reading& reading);
/// In place of one of the same name, over the version that was read. Errors: changedElsewhere;
/// badFormat as diaryMappings().
void saveDiaryMapping(Writing& writing, const DiaryMapping& mapping, Version read);

} // namespace quadrille::db
