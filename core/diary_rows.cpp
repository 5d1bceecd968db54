// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diary_rows.h"

#include "core/cell_text.h"

#include <chrono>
#include <cstdint>

namespace quadrille
{

namespace
{

constexpr int mostSessions = 24;
constexpr int mostContractions = 100'000;
constexpr int mostComfort = 10;
constexpr int mostSkin = 3;
constexpr std::int64_t mostAmplitude = 1'000'000; ///< µA
constexpr Milliseconds longestSession = std::chrono::hours(24);
constexpr std::int64_t thousand = 1000;

/// Digits alone, at most nine.
std::optional<int> wholeNumber(std::string_view text)
{
    constexpr std::size_t mostDigits = 9;
    if (text.empty() || text.size() > mostDigits) {
        return std::nullopt;
    }
    int number = 0;
    for (const char c : text) {
        if (!isDigit(c)) {
            return std::nullopt;
        }
        number = number * 10 + (c - '0');
    }
    return number;
}

std::optional<int> wholeNumberUpTo(std::string_view text, int least, int most)
{
    const auto number = wholeNumber(text);
    return number && *number >= least && *number <= most ? number : std::nullopt;
}

/// "42.5" and "42,5" in thousandths; more decimals only where they are zeros.
std::optional<std::int64_t> thousandths(std::string_view text)
{
    const auto sign = text.find_first_of(".,");
    const auto whole = wholeNumber(text.substr(0, sign));
    if (!whole) {
        return std::nullopt;
    }
    std::int64_t parts = *whole * thousand;
    if (sign == std::string_view::npos) {
        return parts;
    }
    const std::string_view decimals = text.substr(sign + 1);
    if (decimals.empty()) {
        return std::nullopt;
    }
    std::int64_t worth = thousand / 10;
    for (const char c : decimals) {
        if (!isDigit(c) || (worth == 0 && c != '0')) {
            return std::nullopt;
        }
        parts += (c - '0') * worth;
        worth /= 10;
    }
    return parts;
}

std::string_view without(std::string_view text, std::string_view unit)
{
    return text.ends_with(unit) ? trimmed(text.substr(0, text.size() - unit.size())) : text;
}

/// "1:05" or "0:20:00" as its numbers.
struct Clock {
    int numbers[3] = {0, 0, 0};
    int count = 0;
};

std::optional<Clock> clockIn(std::string_view text)
{
    constexpr int mostOfAPart = 59;
    constexpr int mostFirst = 1440;
    Clock clock;
    while (clock.count < 3) {
        const auto colon = text.find(':');
        const auto number =
            wholeNumberUpTo(text.substr(0, colon), 0, clock.count == 0 ? mostFirst : mostOfAPart);
        if (!number) {
            return std::nullopt;
        }
        clock.numbers[clock.count++] = *number;
        if (colon == std::string_view::npos) {
            return clock.count > 1 ? std::optional(clock) : std::nullopt;
        }
        text.remove_prefix(colon + 1);
    }
    return std::nullopt;
}

/// A length of time, or why it is none.
std::variant<Milliseconds, CellProblem> durationIn(std::string_view text,
                                                   std::optional<DurationForm> form)
{
    using std::chrono::hours;
    using std::chrono::minutes;
    using std::chrono::seconds;
    Milliseconds time{};
    if (const auto clock = clockIn(text)) {
        const auto [first, second, third] = clock->numbers;
        if (clock->count == 3) {
            time = hours(first) + minutes(second) + seconds(third);
        } else if (!form) {
            return CellProblem::durationFormNotKnown;
        } else {
            time = *form == DurationForm::hoursMinutes ? hours(first) + minutes(second)
                                                       : minutes(first) + seconds(second);
        }
    } else {
        const auto parts = thousandths(without(text, "min"));
        if (!parts) {
            return CellProblem::minutesUnreadable;
        }
        time = Milliseconds(*parts * 60); // thousandths of a minute are 60 ms
    }
    return time <= longestSession ? std::variant<Milliseconds, CellProblem>(time)
                                  : CellProblem::minutesUnreadable;
}

CellProblem problemOf(DateProblem problem)
{
    switch (problem) {
    case DateProblem::empty:
        return CellProblem::dateMissing;
    case DateProblem::unreadable:
        break;
    case DateProblem::noSuchDay:
        return CellProblem::noSuchDay;
    case DateProblem::twoDigitYear:
        return CellProblem::twoDigitYear;
    case DateProblem::orderNotKnown:
        return CellProblem::dateOrderNotKnown;
    case DateProblem::withZone:
        return CellProblem::dateWithZone;
    }
    return CellProblem::dateUnreadable;
}

/// Fills one row.
class RowReading
{
public:
    RowReading(ReportedRow& row, const ReadingRules& rules)
        : m_row(row)
        , m_rules(rules)
    {
    }

    void take(std::size_t column, const ColumnMeaning& meaning, std::string_view cell)
    {
        const std::string_view text = trimmed(cell);
        if (text.empty()) {
            return;
        }
        switch (meaning.column) {
        case DiaryColumn::date:
            takeDate(column, text);
            return;
        case DiaryColumn::session:
            m_row.session = wholeNumberUpTo(text, 1, mostSessions);
            return require(m_row.session.has_value(), CellProblem::sessionUnreadable, column, text);
        case DiaryColumn::minutes:
            takeMinutes(column, text);
            return;
        case DiaryColumn::contractions:
            m_row.contractions = wholeNumberUpTo(text, 0, mostContractions);
            return require(m_row.contractions.has_value(), CellProblem::contractionsUnreadable,
                           column, text);
        case DiaryColumn::amplitude:
            takeAmplitude(column, text);
            return;
        case DiaryColumn::comfort:
            m_row.comfort = wholeNumberUpTo(text, 0, mostComfort);
            return require(m_row.comfort.has_value(), CellProblem::comfortUnreadable, column, text);
        case DiaryColumn::skin:
            if (const auto skin = wholeNumberUpTo(text, 0, mostSkin)) {
                m_row.skin = static_cast<Skin>(*skin);
            }
            return require(m_row.skin.has_value(), CellProblem::skinUnreadable, column, text);
        case DiaryColumn::pad:
            m_padColumn = column;
            return takeText(m_row.pad, column, text);
        case DiaryColumn::remark:
            return takeText(m_row.remark, column, text);
        }
    }

    /// What only the whole row shows.
    void finish()
    {
        if (!m_row.faults.empty()) {
            return;
        }
        if (!m_row.day) {
            addFault(CellProblem::dateMissing, {}, {});
        }
        const bool tellsMore = m_row.contractions || m_row.comfort || !m_row.amplitudes.empty();
        if (!m_row.duration && tellsMore) {
            addFault(CellProblem::minutesMissing, {}, {});
        }
        if (!m_row.pad.empty() && (!m_row.skin || *m_row.skin == Skin::nothing)) {
            addFault(CellProblem::padWithoutSkin, m_padColumn, m_row.pad);
        }
    }

private:
    void addFault(CellProblem problem, std::optional<std::size_t> column, std::string_view text)
    {
        constexpr std::size_t longestQuote = 80;
        m_row.faults.push_back({.problem = problem,
                                .column = column,
                                .written = std::string(text.substr(0, longestQuote))});
    }
    void require(bool isRead, CellProblem problem, std::size_t column, std::string_view text)
    {
        if (!isRead) {
            addFault(problem, column, text);
        }
    }
    void takeDate(std::size_t column, std::string_view text)
    {
        const WrittenDate written = writtenDate(text, m_rules.dateOrder);
        if (const auto* day = std::get_if<Date>(&written)) {
            m_row.day = *day;
        } else {
            addFault(problemOf(std::get<DateProblem>(written)), column, text);
        }
    }
    void takeMinutes(std::size_t column, std::string_view text)
    {
        const auto read = durationIn(text, m_rules.durationForm);
        if (const auto* time = std::get_if<Milliseconds>(&read)) {
            m_row.duration = *time;
        } else {
            addFault(std::get<CellProblem>(read), column, text);
        }
    }
    void takeAmplitude(std::size_t column, std::string_view text)
    {
        const auto amplitude = thousandths(without(text, "mA"));
        if (!amplitude || *amplitude > mostAmplitude) {
            return addFault(CellProblem::amplitudeUnreadable, column, text);
        }
        m_row.amplitudes.emplace_back(column, Amplitude::fromCount(*amplitude));
    }
    void takeText(std::string& into, std::size_t column, std::string_view text)
    {
        if (text.size() > mostTextBytes) {
            return addFault(CellProblem::textTooLong, column, {});
        }
        into = text;
    }

    ReportedRow& m_row;
    const ReadingRules& m_rules;
    std::optional<std::size_t> m_padColumn;
};

} // namespace

ReportedRow reportedRow(int line, std::span<const std::string_view> cells, std::size_t headings,
                        const ColumnMap& columns, const ReadingRules& rules)
{
    ReportedRow row;
    row.line = line;
    if (cells.size() != headings) {
        row.faults.push_back(
            {.problem = CellProblem::wrongCellCount, .written = std::to_string(cells.size())});
        return row;
    }
    RowReading reading(row, rules);
    for (std::size_t i = 0; i < cells.size() && i < columns.size(); ++i) {
        if (columns[i]) {
            reading.take(i, *columns[i], cells[i]);
        }
    }
    reading.finish();
    return row;
}

void DurationEvidence::note(std::string_view cell)
{
    constexpr int hoursOfADay = 24;
    const auto clock = clockIn(trimmed(cell));
    if (clock && clock->count == 2) {
        m_needed = true;
        m_overADay = m_overADay || clock->numbers[0] > hoursOfADay;
    }
}

std::optional<DurationForm> DurationEvidence::form() const
{
    return m_overADay ? std::optional(DurationForm::minutesSeconds) : std::nullopt;
}

} // namespace quadrille
