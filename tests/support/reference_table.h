// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille::test
{

/// A table of expected figures: comma-separated, headings in the first row. Reading fails loudly
/// (std::runtime_error), because a test without its table has checked nothing.
class ReferenceTable
{
public:
    static ReferenceTable fromFile(const std::string& file);
    static ReferenceTable fromText(std::string_view text);

    const std::vector<std::string>& columns() const { return m_columns; }
    std::size_t rowCount() const { return m_rows.size(); }
    bool hasColumn(const std::string& column) const;
    /// The cell as it is written.
    const std::string& text(std::size_t row, const std::string& column) const;
    /// The cell as a number; the cell must be one.
    double number(std::size_t row, const std::string& column) const;
    /// The cell in thousandths, exact to the last printed decimal: 2.5 is 2500.
    std::int64_t thousandths(std::size_t row, const std::string& column) const;

private:
    std::vector<std::string> m_columns;
    std::vector<std::vector<std::string>> m_rows;
};

} // namespace quadrille::test
