// SPDX-License-Identifier: GPL-3.0-or-later
// What the columns of diary files from one source mean, remembered under a name by the practice.
#pragma once

#include "db/store.h"

#include "core/diary_columns.h"
#include "core/diary_dates.h"

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

/// By name. Error badFormat when the practice's preference "diary_import_mappings" holds something
/// else.
std::vector<DiaryMapping> diaryMappings(Reading& reading);
/// In place of one of the same name.
void saveDiaryMapping(Writing& writing, const DiaryMapping& mapping);

} // namespace quadrille::db
