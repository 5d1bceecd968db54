// SPDX-License-Identifier: GPL-3.0-or-later
// From the text of a diary file to rows: which column holds what, and how dates and times are
// meant.
#pragma once

#include "app/diary_import/diary_file.h"

#include "db/diary_mappings.h"

#include "core/diary_columns.h"
#include "core/diary_rows.h"

#include <QString>

#include <optional>
#include <string>
#include <vector>

namespace quadrille::app
{

/// Columns by the English words and by the names of our own files; each meaning goes to the first
/// heading that says it. `sites` as in meaningOfHeading().
ColumnMap matchedColumns(const DiaryTable& table, const std::vector<std::string>& sites);
/// Columns as they are remembered; nothing where the file lacks one of the headings.
std::optional<ColumnMap> columnsBy(const db::DiaryMapping& mapping, const DiaryTable& table);
/// The remembered mapping that fits a file with most headings; nothing where none fits.
std::optional<db::DiaryMapping> mappingFor(const DiaryTable& table,
                                           const std::vector<db::DiaryMapping>& mappings);
/// What is to be remembered of a file. JSON says itself how its days are written.
db::DiaryMapping mappingOf(const std::string& name, const DiaryFile& file, const ColumnMap& columns,
                           const ReadingRules& rules);

/// The place of the column that holds something.
std::optional<std::size_t> columnOf(const ColumnMap& columns, const ColumnMeaning& meaning);

/// What the cells themselves show.
struct FileEvidence {
    DateEvidence dates;
    DurationEvidence durations;
    std::optional<DurationForm> durationHeading = std::nullopt;

    bool asksDateOrder() const { return dates.isOpen(); }
    bool asksDurationForm() const { return durations.isOpen() && !durationHeading; }
};
FileEvidence evidenceOf(const DiaryFile& file, const ColumnMap& columns);
/// Rules that were not given for this file, such as remembered ones, where it leaves them open;
/// what it shows itself stands above them.
ReadingRules whereAsked(const ReadingRules& rules, const FileEvidence& evidence);
/// The rules that a person gave, and what the file shows where nothing was given.
ReadingRules rulesFrom(const DiaryFile& file, const FileEvidence& evidence,
                       const ReadingRules& given);

/// All rows, in the order of the file; nothing where `readOn` stopped it.
std::optional<std::vector<ReportedRow>> reportedRows(const DiaryFile& file,
                                                     const ColumnMap& columns,
                                                     const ReadingRules& rules,
                                                     const ReadOn& readOn = {});

/// What a diary can't be read without, and the file has no column for: date or minutes.
std::optional<DiaryColumn> missingColumn(const ColumnMap& columns);

} // namespace quadrille::app
