// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary_import/diary_csv.h"

#include "app/command_line/csv_parser.h"
#include "app/words/bad_format.h"

#include "core/cell_text.h"
#include "core/diary_columns.h"

#include <QCoreApplication>

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

namespace quadrille::app
{

namespace
{

struct DiaryCsvWords {
    Q_DECLARE_TR_FUNCTIONS(DiaryCsvWords)
};

/// Feeds the parser line by line, so that each row knows the line on which it begins.
class LineReader : private CsvSink
{
public:
    explicit LineReader(char separator)
        : m_parser(separator, BlankRows::leftOut, *this)
    {
    }

    /// False where a quote is out of place or a cell too long.
    bool readLine(std::string_view line)
    {
        ++m_line;
        const bool blank = line.find_first_not_of("\r\n") == std::string_view::npos;
        if (m_between && !blank) {
            m_between = false;
            m_rowLine = m_line;
        }
        while (!line.empty() && !m_tooLong) {
            const std::string_view piece = line.substr(0, mostCellBytes);
            if (!m_parser.read(piece)) {
                return false;
            }
            // A quote that is never closed would gather the rest of the file.
            m_tooLong = m_tooLong || m_parser.roomForCells() > 2 * mostCellBytes;
            line.remove_prefix(piece.size());
        }
        return !m_tooLong;
    }
    bool finish() { return m_parser.finish() && !m_tooLong; }

    bool isTooLong() const { return m_tooLong; }
    int line() const { return m_line; }
    /// On which the row that is read at present begins.
    int rowLine() const { return m_rowLine; }
    bool hasHeadings() const { return m_hasHeadings; }
    DiaryTable& table() { return m_table; }

private:
    void takeCell(std::string_view cell) override
    {
        m_tooLong = m_tooLong || cell.size() > mostCellBytes;
        if (m_tooLong) {
            return;
        }
        ++m_cells;
        m_isBlank = m_isBlank && cell.find_first_not_of(" \t\r\n") == std::string_view::npos;
        if (m_hasHeadings) {
            m_table.addCell(cell);
        } else {
            m_headings.emplace_back(trimmed(cell));
        }
    }
    void endRow() override
    {
        m_between = true;
        const bool isRow = m_cells > 1 || !m_isBlank;
        m_cells = 0;
        m_isBlank = true;
        if (m_hasHeadings) {
            if (isRow) {
                m_table.endRow(m_rowLine);
            } else {
                m_table.dropCells();
            }
        } else if (isRow) {
            m_hasHeadings = true;
            m_table.setHeadings(std::move(m_headings));
        } else {
            m_headings.clear();
        }
    }

    CsvParser m_parser;
    DiaryTable m_table;
    std::vector<std::string> m_headings;
    bool m_hasHeadings = false;
    bool m_between = true; ///< no row is begun
    bool m_tooLong = false;
    bool m_isBlank = true;
    std::size_t m_cells = 0;
    int m_line = 0;
    int m_rowLine = 1;
};

/// The next line with its end; takes it off the text.
std::string_view takeLine(std::string_view& text)
{
    const auto end = text.find('\n');
    const auto length = end == std::string_view::npos ? text.size() : end + 1;
    const std::string_view line = text.substr(0, length);
    text.remove_prefix(length);
    return line;
}

std::string_view viewOf(const QByteArray& bytes)
{
    return {bytes.constData(), static_cast<std::size_t>(bytes.size())};
}

/// With LF at the ends of rows where the file has CR alone.
QByteArray withLineFeeds(const QByteArray& text)
{
    QByteArray fed = text;
    return text.contains('\n') || !text.contains('\r') ? text : fed.replace('\r', '\n');
}

QString whyNotRead(const LineReader& reader, bool atEnd)
{
    if (reader.isTooLong()) {
        return DiaryCsvWords::tr(
                   "the row of line %1 has a cell of more than 64 kB; close the quote "
                   "that is missing there, or shorten the cell")
            .arg(reader.rowLine());
    }
    return atEnd ? DiaryCsvWords::tr("a quote of the row that begins on line %1 is never closed; "
                                     "close it")
                       .arg(reader.rowLine())
                 : DiaryCsvWords::tr("line %1 has a quote out of place; put the whole cell into "
                                     "quotes and double those inside")
                       .arg(reader.line());
}

/// What is wrong with the headings.
std::optional<QString> problemOf(const LineReader& reader, const DiaryTable& table)
{
    if (!reader.hasHeadings()) {
        return DiaryCsvWords::tr("no headings; the first row must name the columns");
    }
    std::set<std::string> seen;
    for (const std::string& heading : table.headings()) {
        if (!heading.empty() && !seen.insert(heading).second) {
            return DiaryCsvWords::tr("the column “%1” is there twice; leave one away")
                .arg(QString::fromStdString(heading).simplified().left(60));
        }
    }
    return std::nullopt;
}

/// The first row under a separator.
std::vector<std::string> headingsUnder(std::string_view text, char separator)
{
    constexpr int mostLines = 50;
    LineReader reader(separator);
    for (int i = 0; i < mostLines && !text.empty() && !reader.hasHeadings(); ++i) {
        if (!reader.readLine(takeLine(text))) {
            return {};
        }
    }
    if (!reader.hasHeadings() && !reader.finish()) {
        return {};
    }
    return reader.table().headings();
}

} // namespace

char separatorOf(const QByteArray& utf8)
{
    const QByteArray text = withLineFeeds(utf8);
    char best = ',';
    std::pair<std::ptrdiff_t, std::size_t> most{-1, 0};
    for (const char separator : {',', ';', '\t'}) {
        const auto headings = headingsUnder(viewOf(text), separator);
        const std::pair known{
            std::ranges::count_if(headings,
                                  [](const std::string& heading) {
                                      return meaningOfHeading(heading, {}).has_value();
                                  }),
            headings.size()};
        if (known > most) {
            most = known;
            best = separator;
        }
    }
    return best;
}

Result<DiaryTable> diaryTableFromCsv(const QByteArray& utf8, char separator, const QString& name,
                                     const ReadOn& readOn)
{
    if (const auto nul = utf8.indexOf('\0'); nul >= 0) {
        return badFormat(name, DiaryCsvWords::tr("line %1 holds a NUL, so it is no text; save the "
                                                 "table as CSV in UTF-8")
                                   .arg(utf8.left(nul).count('\n') + 1));
    }
    const QByteArray fed = withLineFeeds(utf8);
    const std::string_view whole = viewOf(fed);
    std::string_view text = whole;
    constexpr int linesBetweenQuestions = 10'000;
    LineReader reader(separator);
    while (!text.empty()) {
        if (!reader.readLine(takeLine(text))) {
            return badFormat(name, whyNotRead(reader, false));
        }
        if (readOn && reader.line() % linesBetweenQuestions == 0 &&
            !readOn(1.0 - static_cast<double>(text.size()) / static_cast<double>(whole.size()))) {
            return Error{.code = ErrorCode::refused, .subject = {}, .detail = "it was stopped"};
        }
    }
    if (!reader.finish()) {
        return badFormat(name, whyNotRead(reader, true));
    }
    if (const auto problem = problemOf(reader, reader.table())) {
        return badFormat(name, *problem);
    }
    return std::move(reader.table());
}

} // namespace quadrille::app
