// SPDX-License-Identifier: GPL-3.0-or-later
// What the readers of diaries have in common.
#pragma once

#include "app/diary_import/diary_file.h"
#include "app/diary_import/diary_matching.h"
#include "tests/fuzz/tables.h"

#include "core/diary_import.h"

#include <vector>

namespace quadrille::test
{

/// A course of 2026 with one site and one session on file, which differs from most of what is read.
inline DiaryOnFile courseOnFile()
{
    DiaryOnFile onFile;
    Course& course = onFile.records.course;
    course.id = CourseId(1);
    course.startDate = Date(std::chrono::year(2026) / 1 / 1);
    onFile.today = Date(std::chrono::year(2026) / 12 / 31);
    Block block;
    block.sites.resize(1);
    Plan plan;
    plan.fromDate = course.startDate;
    plan.blocks = {block};
    onFile.records.plans = {plan};
    onFile.siteKeys = {{{1}}};
    DiaryEntry entry;
    entry.id = DiaryEntryId(1);
    entry.course = course.id;
    entry.day = Date(std::chrono::year(2026) / 3 / 9);
    entry.duration = std::chrono::minutes(15);
    onFile.records.entries = {entry};
    return onFile;
}

/// Each row is called what becomes of it.
inline void requireStates(const DiaryImport& import, const std::vector<ReportedRow>& rows)
{
    require(import.rows.size() == rows.size());
    int before = 0;
    for (const ImportRow& row : import.rows) {
        const ReportedRow& told = rows[row.reported];
        require(told.line > before);
        before = told.line;
        require((row.state == RowState::invalid) == !row.faults.empty());
        require(row.state != RowState::fresh || import.takes(row));
        require(!import.takes(row) || row.state == RowState::fresh ||
                row.state == RowState::conflict);
    }
    for (const auto& item : import.sessions) {
        require(item.file.sessionNumber >= 1 && item.file.sessionNumber <= 24);
        require(item.file.duration >= Milliseconds(0) &&
                item.file.duration <= std::chrono::hours(24));
        require(!item.file.comfort || (*item.file.comfort >= 0 && *item.file.comfort <= 10));
    }
}

/// Each row becomes one of the plan, which takes nothing that is not whole and nothing over what is
/// on file unasked; a second look finds all of it on file.
inline void requirePlan(const app::DiaryFile& file)
{
    const ColumnMap columns = app::matchedColumns(file.table, {});
    const app::FileEvidence evidence = app::evidenceOf(file, columns);
    const ReadingRules rules = app::rulesFrom(file, evidence, {});
    const auto rows = app::reportedRows(file, columns, rules);
    require(rows.has_value() && rows->size() == file.table.rowCount());
    DiaryOnFile onFile = courseOnFile();
    DiaryImport import = planImport(*rows, columns, onFile);
    requireStates(import, *rows);
    require(takeOverOf(import, onFile, std::nullopt).changedEntries.empty());
    import.takeFileForAll(true);
    const DiaryTakeOver taken = takeOverOf(import, onFile, std::nullopt);
    require(taken.changedEntries.size() <= 1);
    std::vector<DiaryEntry>& entries = onFile.records.entries;
    entries = taken.changedEntries.empty() ? entries : taken.changedEntries;
    entries.insert(entries.end(), taken.newEntries.begin(), taken.newEntries.end());
    onFile.records.days = taken.days;
    const DiaryImport again = planImport(*rows, columns, onFile);
    require(again.rowsTaken() == 0 && again.count(RowState::conflict) == 0);
}

} // namespace quadrille::test
