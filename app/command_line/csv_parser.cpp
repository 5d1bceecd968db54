// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/csv_parser.h"

#include <csv.h>

namespace quadrille::app
{

namespace
{

int isRowEnd(unsigned char c)
{
    return c == CSV_LF ? 1 : 0;
}

int isBlank(unsigned char c)
{
    return c == CSV_CR ? 1 : 0;
}

void takeCell(void* text, std::size_t length, void* sink)
{
    static_cast<CsvSink*>(sink)->takeCell({static_cast<const char*>(text), length});
}

void endRow(int /*end*/, void* sink)
{
    static_cast<CsvSink*>(sink)->endRow();
}

} // namespace

struct CsvParser::State {
    csv_parser parser{};
    CsvSink* sink = nullptr;
};

CsvParser::CsvParser(char separator, BlankRows blankRows, CsvSink& sink)
    : m_state(std::make_unique<State>())
{
    const int blank = blankRows == BlankRows::told ? CSV_REPALL_NL : 0;
    csv_init(&m_state->parser, static_cast<unsigned char>(CSV_STRICT | CSV_STRICT_FINI | blank));
    csv_set_delim(&m_state->parser, static_cast<unsigned char>(separator));
    csv_set_term_func(&m_state->parser, isRowEnd);
    csv_set_space_func(&m_state->parser, isBlank);
    // The library's own 128 bytes at a time make a long cell be copied over and over.
    constexpr std::size_t roomAtATime = 4096;
    csv_set_blk_size(&m_state->parser, roomAtATime);
    m_state->sink = &sink;
}

CsvParser::~CsvParser()
{
    csv_free(&m_state->parser);
}

bool CsvParser::read(std::string_view text)
{
    return csv_parse(&m_state->parser, text.data(), text.size(), takeCell, endRow, m_state->sink) ==
           text.size();
}

std::size_t CsvParser::roomForCells() const
{
    return csv_get_buffer_size(&m_state->parser);
}

bool CsvParser::finish()
{
    return csv_fini(&m_state->parser, takeCell, endRow, m_state->sink) == 0;
}

} // namespace quadrille::app
