// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary_import/diary_matching.h"

#include <algorithm>
#include <set>
#include <string_view>

namespace quadrille::app
{

ColumnMap matchedColumns(const DiaryTable& table, const std::vector<std::string>& sites)
{
    ColumnMap columns;
    std::set<ColumnMeaning> taken;
    for (const std::string& heading : table.headings()) {
        const auto meaning = meaningOfHeading(heading, sites);
        const bool isNew = meaning && taken.insert(*meaning).second;
        columns.push_back(isNew ? meaning : std::nullopt);
    }
    return columns;
}

std::optional<ColumnMap> columnsBy(const db::DiaryMapping& mapping, const DiaryTable& table)
{
    ColumnMap columns(table.headings().size());
    for (const auto& [heading, meaning] : mapping.columns) {
        const auto found = std::ranges::find(table.headings(), heading);
        if (found == table.headings().end()) {
            return std::nullopt;
        }
        columns[static_cast<std::size_t>(found - table.headings().begin())] = meaning;
    }
    return columns;
}

std::optional<db::DiaryMapping> mappingFor(const DiaryTable& table,
                                           const std::vector<db::DiaryMapping>& mappings)
{
    std::optional<db::DiaryMapping> best;
    for (const db::DiaryMapping& mapping : mappings) {
        const bool fits = !mapping.columns.empty() && columnsBy(mapping, table).has_value();
        if (fits && (!best || mapping.columns.size() > best->columns.size())) {
            best = mapping;
        }
    }
    return best;
}

db::DiaryMapping mappingOf(const std::string& name, const DiaryFile& file, const ColumnMap& columns,
                           const ReadingRules& rules)
{
    db::DiaryMapping mapping{.name = name,
                             .separator =
                                 file.isJson ? std::nullopt : std::optional(file.separator),
                             .dateOrder = file.isJson ? std::nullopt : rules.dateOrder,
                             .durationForm = rules.durationForm};
    for (std::size_t i = 0; i < columns.size(); ++i) {
        if (columns[i]) {
            mapping.columns.emplace_back(file.table.headings()[i], *columns[i]);
        }
    }
    return mapping;
}

std::optional<std::size_t> columnOf(const ColumnMap& columns, const ColumnMeaning& meaning)
{
    const auto found = std::ranges::find(columns, std::optional(meaning));
    return found == columns.end()
               ? std::nullopt
               : std::optional(static_cast<std::size_t>(found - columns.begin()));
}

FileEvidence evidenceOf(const DiaryFile& file, const ColumnMap& columns)
{
    FileEvidence evidence;
    const auto dates = columnOf(columns, {.column = DiaryColumn::date});
    const auto minutes = columnOf(columns, {.column = DiaryColumn::minutes});
    if (minutes) {
        evidence.durationHeading = durationFormInHeading(file.table.headings()[*minutes]);
    }
    for (std::size_t row = 0; row < file.table.rowCount(); ++row) {
        if (dates) {
            evidence.dates.note(file.table.cell(row, *dates));
        }
        if (minutes) {
            evidence.durations.note(file.table.cell(row, *minutes));
        }
    }
    return evidence;
}

ReadingRules whereAsked(const ReadingRules& rules, const FileEvidence& evidence)
{
    return {.dateOrder = evidence.asksDateOrder() ? rules.dateOrder : std::nullopt,
            .durationForm = evidence.asksDurationForm() ? rules.durationForm : std::nullopt};
}

ReadingRules rulesFrom(const DiaryFile& file, const FileEvidence& evidence,
                       const ReadingRules& given)
{
    ReadingRules rules = given;
    if (file.isJson) {
        rules.dateOrder = DateOrder::yearMonthDay; // the format says so
    }
    if (!rules.dateOrder) {
        rules.dateOrder = evidence.dates.order();
    }
    if (!rules.durationForm) {
        rules.durationForm =
            evidence.durationHeading ? evidence.durationHeading : evidence.durations.form();
    }
    return rules;
}

std::optional<std::vector<ReportedRow>> reportedRows(const DiaryFile& file,
                                                     const ColumnMap& columns,
                                                     const ReadingRules& rules,
                                                     const ReadOn& readOn)
{
    constexpr std::size_t rowsBetweenQuestions = 10'000;
    const DiaryTable& table = file.table;
    std::vector<ReportedRow> rows;
    rows.reserve(table.rowCount());
    std::vector<std::string_view> cells;
    for (std::size_t i = 0; i < table.rowCount(); ++i) {
        table.cellsOf(i, cells);
        rows.push_back(
            reportedRow(table.lineOf(i), cells, table.headings().size(), columns, rules));
        if (readOn && i % rowsBetweenQuestions == rowsBetweenQuestions - 1 &&
            !readOn(static_cast<double>(i) / static_cast<double>(table.rowCount()))) {
            return std::nullopt;
        }
    }
    return rows;
}

std::optional<DiaryColumn> missingColumn(const ColumnMap& columns)
{
    for (const DiaryColumn needed : {DiaryColumn::date, DiaryColumn::minutes}) {
        if (!columnOf(columns, {.column = needed})) {
            return needed;
        }
    }
    return std::nullopt;
}

} // namespace quadrille::app
