// SPDX-License-Identifier: GPL-3.0-or-later
// What taking over a diary file would do, row by row, before anything is saved. What is on file
// already stays unless a person says otherwise.
#pragma once

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

/// How a site is called in headings: "vastus lateralis right".
std::string siteWords(const Site& site);
/// Those of all sites of the plans, each once, in order.
std::vector<std::string> siteWordsOf(const std::vector<Plan>& plans);
/// The highest channel of any site of the plans; 0 without one.
int mostChannel(const std::vector<Plan>& plans);

/// The key under which a diary names a site of a plan.
struct PlanSiteKey {
    int plan = 1;          ///< its number
    std::size_t block = 0; ///< its place in the plan
    std::size_t site = 0;  ///< its place in the block
    std::int64_t key = 0;
    friend bool operator==(const PlanSiteKey&, const PlanSiteKey&) = default;
};

/// What a diary file is held against.
struct DiaryOnFile {
    CourseRecords records;
    std::vector<PlanSiteKey> siteKeys;
    Date today;
};

enum class RowState {
    fresh,       ///< not on file yet
    same,        ///< on file already, left out
    conflict,    ///< on file otherwise
    beforeStart, ///< outside the course, left out
    afterEnd,    ///< likewise
    afterToday,  ///< left out
    repeated,    ///< another row of the file says the same, left out
    saysNothing, ///< a day alone, left out
    invalid,     ///< see its faults, left out
};
inline constexpr std::size_t rowStates = 9;

/// A session or a day as the file tells it, beside what is on file. `file` is whole: where the file
/// is silent it holds what is on file.
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
    std::optional<std::size_t> day = std::nullopt; ///< among the days, in the first row that tells
    int otherLine = 0;                             ///< repeated: of the row that says the same
    std::vector<CellFault> faults = {};
    bool takeFile = false; ///< of a conflict
};

struct DiaryImport {
    std::vector<ImportRow> rows; ///< one for each of the file, in its order
    std::vector<ImportItem<DiaryEntry>> sessions;
    std::vector<ImportItem<DiaryDay>> days;

    std::size_t count(RowState state) const;
    /// Rows of which something would be taken over as things stand.
    std::size_t rowsTaken() const;
    bool takes(const ImportRow& row) const;
    /// Of every conflict.
    void takeFileForAll(bool file);
    /// Of the sessions and days that are told of, wherever they come from.
    std::optional<Date> lastDay() const;
};

/// Holds the rows of a file against the course. Rows without a session number are numbered within
/// their day in the order of the file, unless a column gives numbers. Remarks of one day are put
/// together, line by line; skin and pad of one day must not contradict each other.
///
/// An amplitude belongs to the site of its channel in the block in force on the day; after the last
/// week that is the last block of the plan in force.
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
