// SPDX-License-Identifier: GPL-3.0-or-later
// What the readers of diaries have in common.
#pragma once

#include "app/diary_import/diary_file.h"
#include "app/diary_import/diary_matching.h"
#include "tests/fuzz/tables.h"

#include "core/diary_import.h"

namespace quadrille::test
{

/// Each row becomes one of the plan, which takes nothing that is not whole; a second look gives the
/// same.
inline void requirePlan(const app::DiaryFile& file)
{
    const ColumnMap columns = app::matchedColumns(file.table, {});
    const app::FileEvidence evidence = app::evidenceOf(file, columns);
    const ReadingRules rules = app::rulesFrom(file, evidence, {});
    const auto rows = app::reportedRows(file, columns, rules);
    require(rows.has_value() && rows->size() == file.table.rowCount());
    DiaryOnFile onFile;
    onFile.records.course.id = CourseId(1);
    onFile.records.course.startDate = Date(std::chrono::year(2026) / 1 / 1);
    onFile.today = Date(std::chrono::year(2026) / 12 / 31);
    const DiaryImport import = planImport(*rows, columns, onFile);
    require(import.rows.size() == rows->size());
    int before = 0;
    for (const ImportRow& row : import.rows) {
        const ReportedRow& told = (*rows)[row.reported];
        require(told.line > before);
        before = told.line;
        require((row.state == RowState::invalid) == !row.faults.empty());
        require(!import.takes(row) || row.state == RowState::fresh);
    }
    for (const auto& item : import.sessions) {
        require(item.file.sessionNumber >= 1 && item.file.sessionNumber <= 24);
        require(item.file.duration >= Milliseconds(0) &&
                item.file.duration <= std::chrono::hours(24));
        require(!item.file.comfort || (*item.file.comfort >= 0 && *item.file.comfort <= 10));
    }
    onFile.records.entries = takeOverOf(import, onFile, std::nullopt).newEntries;
    onFile.records.days = takeOverOf(import, onFile, std::nullopt).days;
    require(planImport(*rows, columns, onFile).rowsTaken() == 0);
}

} // namespace quadrille::test
