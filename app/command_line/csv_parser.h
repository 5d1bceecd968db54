// SPDX-License-Identifier: GPL-3.0-or-later
// The door to the library that reads comma-separated tables.
#pragma once

#include <cstddef>
#include <memory>
#include <string_view>

namespace quadrille::app
{

/// What is called back while a table is read.
class CsvSink
{
public:
    virtual ~CsvSink() = default;
    virtual void takeCell(std::string_view text) = 0;
    virtual void endRow() = 0;
};

enum class BlankRows { leftOut, told };

/// Cells between `separator`, in quotes where they need them (RFC 4180), quotes out of place
/// refused. Only LF ends a row, so that rows can be counted; the CR before it is taken for a blank
/// and falls away. Other blanks belong to their cell.
class CsvParser
{
public:
    /// `sink` outlives it.
    CsvParser(char separator, BlankRows blankRows, CsvSink& sink);
    ~CsvParser();
    CsvParser(const CsvParser&) = delete;
    CsvParser& operator=(const CsvParser&) = delete;

    /// Reads on; false where a quote is out of place.
    bool read(std::string_view text);
    /// Room taken for the longest cell so far, the one that is not at its end included; a little
    /// more than that cell has.
    std::size_t roomForCells() const;
    /// The text is at its end; false where a quote is open.
    bool finish();

private:
    struct State;
    std::unique_ptr<State> m_state;
};

} // namespace quadrille::app
