// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diary_import.h"

#include <algorithm>

namespace quadrille
{

namespace
{

bool isTaken(RowState state, bool takeFile)
{
    return state == RowState::fresh || (state == RowState::conflict && takeFile);
}

} // namespace

std::size_t DiaryImport::count(RowState state) const
{
    return static_cast<std::size_t>(std::ranges::count(rows, state, &ImportRow::state));
}

bool DiaryImport::takes(const ImportRow& row) const
{
    return (row.session && isTaken(sessions[*row.session].state, row.takeFile)) ||
           (row.day && isTaken(days[*row.day].state, row.takeFile));
}

std::size_t DiaryImport::rowsTaken() const
{
    return static_cast<std::size_t>(
        std::ranges::count_if(rows, [&](const ImportRow& row) { return takes(row); }));
}

void DiaryImport::choose(std::size_t row, bool file)
{
    ImportRow& chosen = rows[row];
    if (chosen.state != RowState::conflict) {
        return;
    }
    chosen.takeFile = file;
    if (!chosen.day || days[*chosen.day].state != RowState::conflict) {
        return;
    }
    for (ImportRow& other : rows) {
        other.takeFile = other.day == chosen.day ? file : other.takeFile;
    }
}

void DiaryImport::takeFileForAll(bool file)
{
    for (ImportRow& row : rows) {
        row.takeFile = file && row.state == RowState::conflict;
    }
}

std::optional<Date> DiaryImport::lastDay() const
{
    std::optional<Date> last;
    const auto see = [&](Date day) { last = std::max(last.value_or(day), day); };
    for (const auto& item : sessions) {
        see(item.file.day);
    }
    for (const auto& item : days) {
        see(item.file.day);
    }
    return last;
}

DiaryTakeOver takeOverOf(const DiaryImport& import, const DiaryOnFile& onFile,
                         std::optional<Date> through)
{
    DiaryTakeOver taken;
    std::vector<bool> isIn(import.days.size()); // a day stands in several rows
    for (const ImportRow& row : import.rows) {
        if (row.session && isTaken(import.sessions[*row.session].state, row.takeFile)) {
            const auto& item = import.sessions[*row.session];
            (item.ours ? taken.changedEntries : taken.newEntries).push_back(item.file);
        }
        if (row.day && !isIn[*row.day] && isTaken(import.days[*row.day].state, row.takeFile)) {
            isIn[*row.day] = true;
            taken.days.push_back(import.days[*row.day].file);
        }
    }
    const auto known = std::ranges::any_of(onFile.records.receipts, [&](const auto& receipt) {
        return !receipt.withdrawn && through && receipt.throughDate >= *through;
    });
    if (through && !known) {
        taken.receipt = DiaryReceived{.course = onFile.records.course.id,
                                      .throughDate = *through,
                                      .receivedOn = onFile.today};
    }
    return taken;
}

} // namespace quadrille
