// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary_import/diary_table.h"

namespace quadrille::app
{

std::string_view DiaryTable::textOf(std::size_t cell) const
{
    const std::size_t begin = cell == 0 ? 0 : m_ends[cell - 1];
    return std::string_view(m_text).substr(begin, m_ends[cell] - begin);
}

void DiaryTable::cellsOf(std::size_t row, std::vector<std::string_view>& cells) const
{
    cells.clear();
    for (std::size_t i = firstCellOf(row); i < m_rows[row].endCell; ++i) {
        cells.push_back(textOf(i));
    }
}

std::string_view DiaryTable::cell(std::size_t row, std::size_t column) const
{
    const std::size_t place = firstCellOf(row) + column;
    return place < m_rows[row].endCell ? textOf(place) : std::string_view();
}

void DiaryTable::addCell(std::string_view text)
{
    m_text += text;
    m_ends.push_back(static_cast<std::uint32_t>(m_text.size()));
}

void DiaryTable::endRow(int line)
{
    m_rows.push_back({static_cast<std::uint32_t>(m_ends.size()), line});
}

void DiaryTable::dropCells()
{
    m_ends.resize(m_rows.empty() ? 0 : m_rows.back().endCell);
    m_text.resize(m_ends.empty() ? 0 : m_ends.back());
}

} // namespace quadrille::app
