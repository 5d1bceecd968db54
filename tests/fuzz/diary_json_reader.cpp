// SPDX-License-Identifier: GPL-3.0-or-later
// A diary that comes as JSON.
#include "app/diary_import/diary_json.h"
#include "tests/fuzz/diaries.h"

void quadrille::test::readInput(std::string_view input)
{
    const QString name = QStringLiteral("table.csv");
    auto table = app::diaryTableFromJson(bytesOf(input), name);
    if (!table) {
        requireSentence(table.error());
        return;
    }
    app::DiaryFile file;
    file.name = name;
    file.isJson = true;
    file.table = std::move(table).value();
    requirePlan(file);
}
