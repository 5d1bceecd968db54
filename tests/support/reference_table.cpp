// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/reference_table.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <csv.h>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <utility>

namespace quadrille::test
{

namespace
{

struct Rows {
    std::vector<std::vector<std::string>> finished;
    std::vector<std::string> current;
};

void addCell(void* text, std::size_t length, void* rows)
{
    static_cast<Rows*>(rows)->current.emplace_back(static_cast<const char*>(text), length);
}

void addRow(int /*lineEnd*/, void* rows)
{
    auto* const target = static_cast<Rows*>(rows);
    target->finished.push_back(std::exchange(target->current, {}));
}

} // namespace

ReferenceTable ReferenceTable::fromFile(const std::string& file)
{
    std::ifstream stream(file, std::ios::binary);
    if (!stream) {
        throw std::runtime_error("no reference table " + file);
    }
    return fromText(std::string(std::istreambuf_iterator<char>(stream), {}));
}

ReferenceTable ReferenceTable::fromText(std::string_view text)
{
    Rows rows;
    csv_parser parser{};
    csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI);
    const bool read =
        csv_parse(&parser, text.data(), text.size(), addCell, addRow, &rows) == text.size() &&
        csv_fini(&parser, addCell, addRow, &rows) == 0;
    csv_free(&parser);
    if (!read || rows.finished.size() < 2) {
        throw std::runtime_error("not a table with headings and rows");
    }
    ReferenceTable table;
    table.m_columns = rows.finished.front();
    table.m_rows.assign(std::next(rows.finished.begin()), rows.finished.end());
    for (const auto& row : table.m_rows) {
        if (row.size() != table.m_columns.size()) {
            throw std::runtime_error("a row of another length than the headings");
        }
    }
    return table;
}

bool ReferenceTable::hasColumn(const std::string& column) const
{
    return std::ranges::find(m_columns, column) != m_columns.end();
}

const std::string& ReferenceTable::text(std::size_t row, const std::string& column) const
{
    const auto found = std::ranges::find(m_columns, column);
    if (found == m_columns.end()) {
        throw std::runtime_error("no column " + column);
    }
    return m_rows.at(row).at(static_cast<std::size_t>(found - m_columns.begin()));
}

double ReferenceTable::number(std::size_t row, const std::string& column) const
{
    const std::string& cell = text(row, column);
    double value = 0.0;
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (error != std::errc() || end != cell.data() + cell.size()) {
        throw std::runtime_error("no number in column " + column + ": '" + cell + "'");
    }
    return value;
}

std::int64_t ReferenceTable::thousandths(std::size_t row, const std::string& column) const
{
    return std::llround(number(row, column) * 1000.0);
}

} // namespace quadrille::test
