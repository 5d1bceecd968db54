// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace quadrille::app
{

/// The cells of a diary file as text (UTF-8), all in one piece of memory: a file of a million rows
/// needs little more than its own size.
class DiaryTable
{
public:
    const std::vector<std::string>& headings() const { return m_headings; }
    std::size_t rowCount() const { return m_rows.size(); }
    /// The line on which a row begins, from 1; of JSON the number of the entry.
    int lineOf(std::size_t row) const { return m_rows[row].line; }
    /// The cells of a row, alive as long as the table; as many as the row has.
    void cellsOf(std::size_t row, std::vector<std::string_view>& cells) const;
    /// One cell; empty where the row has none there.
    std::string_view cell(std::size_t row, std::size_t column) const;

    void setHeadings(std::vector<std::string> headings) { m_headings = std::move(headings); }
    void addCell(std::string_view text);
    /// Makes a row of the cells added since the last one.
    void endRow(int line);
    /// Forgets them.
    void dropCells();

private:
    struct Row {
        std::uint32_t endCell; ///< behind its last
        int line;
    };
    std::size_t firstCellOf(std::size_t row) const
    {
        return row == 0 ? 0 : m_rows[row - 1].endCell;
    }
    std::string_view textOf(std::size_t cell) const;

    std::vector<std::string> m_headings;
    std::string m_text;
    std::vector<std::uint32_t> m_ends; ///< of cells in the text
    std::vector<Row> m_rows;
};

} // namespace quadrille::app
