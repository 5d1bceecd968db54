// SPDX-License-Identifier: GPL-3.0-or-later
// What taking over a diary file would do, row by row, before anything is saved. What is on file
// already stays unless a person says otherwise.
#pragma once

#include "core/day_sites.h"
#include "core/diary.h"
#include "core/diary_columns.h"
#include "core/diary_rows.h"
#include "core/lived_days.h"
#include "core/plan.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace quadrille
{

/// What a diary file is held against.
struct DiaryOnFile {
    CourseRecords records;
    SiteKeys siteKeys; ///< of each of the plans of the records
    Date today;
};

enum class RowState {
    fresh,       ///< something of it is not on file yet
    same,        ///< on file already, left out
    conflict,    ///< something of it is on file otherwise
    beforeStart, ///< outside the course, left out
    afterEnd,    ///< likewise
    afterToday,  ///< left out
    repeated,    ///< adds nothing to another row of the file, left out
    saysNothing, ///< a day alone, left out
    invalid,     ///< see its faults, left out
};
inline constexpr std::size_t rowStates = 9;

/// A session or a day as the file tells it, beside what is on file. `file` is whole: where the file
/// is silent it holds what is on file; of a session that was withdrawn nothing.
template <class Record>
struct ImportItem {
    Record file;
    std::optional<Record> ours = std::nullopt;
    RowState state = RowState::fresh; ///< fresh, same or conflict
};

struct ImportRow {
    std::size_t reported = 0; ///< its place among the rows of the file
    RowState state = RowState::invalid;
    std::optional<std::size_t> session = std::nullopt; ///< its place among the sessions
    std::optional<std::size_t> day = std::nullopt;     ///< among the days, in rows that add to it
    int otherLine = 0;                                 ///< repeated: of the row that says the same
    std::vector<CellFault> faults = {};
    bool takeFile = false; ///< of a conflict; see choose()
};

struct DiaryImport {
    std::vector<ImportRow> rows; ///< one for each of the file, in its order
    std::vector<ImportItem<DiaryEntry>> sessions;
    std::vector<ImportItem<DiaryDay>> days;

    std::size_t count(RowState state) const;
    /// Rows of which something would be taken over as things stand.
    std::size_t rowsTaken() const;
    bool takes(const ImportRow& row) const;
    /// Takes the file's value of a conflict, or leaves what is on file. Rows of one day that
    /// differs go together.
    void choose(std::size_t row, bool file);
    /// Of every conflict.
    void takeFileForAll(bool file);
    /// Of the sessions and days that are told of, wherever they come from.
    std::optional<Date> lastDay() const;
};

/// Holds the rows of a file against the course. Rows without a session number are numbered within
/// their day in the order of the file, unless a column gives numbers. Remarks of one day are put
/// together, line by line; where rows of one day contradict each other in skin or pad, or rows of
/// one session in anything, none of them is taken.
///
/// An amplitude belongs to the site of its channel in the block that blockReportedOn() gives.
DiaryImport planImport(const std::vector<ReportedRow>& rows, const ColumnMap& columns,
                       const DiaryOnFile& onFile);

/// What is saved when an import is taken over.
struct DiaryTakeOver {
    std::vector<DiaryEntry> newEntries;
    std::vector<DiaryEntry> changedEntries; ///< with the version that was read
    std::vector<DiaryDay> days;             ///< new ones without a key
    std::optional<DiaryReceived> receipt = std::nullopt;

    std::size_t size() const
    {
        return newEntries.size() + changedEntries.size() + days.size() + (receipt ? 1U : 0U);
    }
};
/// `through`: the diary is complete through this day, which is said only where it lies after what
/// is known already.
DiaryTakeOver takeOverOf(const DiaryImport& import, const DiaryOnFile& onFile,
                         std::optional<Date> through);

} // namespace quadrille
