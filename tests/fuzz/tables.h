// SPDX-License-Identifier: GPL-3.0-or-later
// What the readers of tables have in common.
#pragma once

#include "app/command_line/csv_table.h"
#include "tests/fuzz/reader.h"

#include "core/result.h"

#include <QByteArray>

#include <string_view>

namespace quadrille::test
{

inline QByteArray bytesOf(std::string_view input)
{
    return {input.data(), static_cast<qsizetype>(input.size())};
}

/// A refusal names the file and says what is wrong with it, in one line.
inline void requireSentence(const Error& error, std::string_view file = "table.csv")
{
    require(error.code == ErrorCode::badFormat);
    require(error.subject == file && !error.detail.empty());
    require(error.detail.find('\n') == std::string::npos);
}

/// What csv_table promises.
inline void requireWellFormed(const app::CsvTable& table)
{
    require(!table.columns.isEmpty());
    int before = 1; // the headings
    for (const app::CsvRow& row : table.rows) {
        require(row.cells.size() == table.columns.size() && row.number > before);
        before = row.number;
    }
}

} // namespace quadrille::test
