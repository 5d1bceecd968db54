// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diary_dates.h"

#include "core/cell_text.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cstddef>

namespace quadrille
{

namespace
{

constexpr int firstYear = 1900;
constexpr int lastYear = 2199;
constexpr int monthsOfAYear = 12;

bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// A run of digits or letters, and what stands between it and the one before.
struct Part {
    std::string_view text;
    std::string_view gap;
    bool isNumber = false;
    int number = 0;
};

struct Parts {
    std::array<Part, 3> part;
    std::size_t count = 0;
    std::string_view rest; ///< behind the third
};

/// The first three runs of the text.
Parts partsOf(std::string_view text)
{
    Parts parts;
    std::size_t at = 0;
    while (at < text.size() && parts.count < parts.part.size()) {
        const std::size_t gap = at;
        while (at < text.size() && !isDigit(text[at]) && !isLetter(text[at])) {
            ++at;
        }
        const std::size_t begin = at;
        const bool isNumber = begin < text.size() && isDigit(text[begin]);
        const auto belongs = isNumber ? isDigit : isLetter;
        while (at < text.size() && belongs(text[at])) {
            ++at;
        }
        if (begin == at) {
            break;
        }
        Part& part = parts.part[parts.count++];
        part = {text.substr(begin, at - begin), text.substr(gap, begin - gap), isNumber, 0};
        constexpr std::size_t mostDigits = 8;
        if (isNumber && part.text.size() <= mostDigits) {
            for (const char digit : part.text) {
                part.number = part.number * 10 + (digit - '0');
            }
        }
    }
    parts.rest = text.substr(at);
    return parts;
}

/// 1 … 12 of "Mar", "march"; 0 of anything else.
int monthNamed(std::string_view word)
{
    constexpr std::array<std::string_view, monthsOfAYear> names{
        "january", "february", "march",     "april",   "may",      "june",
        "july",    "august",   "september", "october", "november", "december"};
    constexpr std::size_t shortest = 3;
    const auto matches = [&](std::string_view name) {
        return (word.size() == shortest || word.size() == name.size()) &&
               std::ranges::equal(word, name.substr(0, word.size()), {}, [](char c) {
                   return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
               });
    };
    const auto* const found = std::ranges::find_if(names, matches);
    return found == names.end() ? 0 : static_cast<int>(found - names.begin()) + 1;
}

WrittenDate dayOf(int year, int month, int day)
{
    const std::chrono::year_month_day date(std::chrono::year(year),
                                           std::chrono::month(static_cast<unsigned>(month)),
                                           std::chrono::day(static_cast<unsigned>(day)));
    if (year < firstYear || year > lastYear || !date.ok()) {
        return DateProblem::noSuchDay;
    }
    return Date(date);
}

/// What follows a day: nothing, or a time of day. Nothing (optional) where it is anything else.
std::optional<DateProblem> problemOfTime(std::string_view rest)
{
    if (rest.empty()) {
        return std::nullopt;
    }
    if (rest.front() != 'T' && rest.front() != ' ') {
        return DateProblem::unreadable;
    }
    rest.remove_prefix(1);
    const auto hour = partsOf(rest);
    if (hour.count == 0 || !hour.part[0].isNumber || !hour.part[0].gap.empty()) {
        return DateProblem::unreadable;
    }
    const bool zone = rest.find_first_of("Zz+-") != std::string_view::npos;
    const bool clock = rest.find_first_not_of("0123456789:.,Zz+-") == std::string_view::npos &&
                       rest.find(':') != std::string_view::npos;
    if (!clock) {
        return DateProblem::unreadable;
    }
    return zone ? std::optional(DateProblem::withZone) : std::nullopt;
}

bool isOneOf(std::string_view gap, std::string_view signs)
{
    return gap.size() == 1 && signs.find(gap.front()) != std::string_view::npos;
}

/// Three numbers with one sign between them: 9/3/2026, 9.3.2026, 2026-03-09.
bool isThreeNumbers(const Parts& parts)
{
    return parts.count == 3 && parts.part[0].isNumber && parts.part[1].isNumber &&
           parts.part[2].isNumber && parts.part[0].gap.empty() &&
           isOneOf(parts.part[1].gap, "-./") && parts.part[1].gap == parts.part[2].gap;
}

constexpr std::size_t yearDigits = 4;
constexpr std::size_t dayDigits = 2;

bool areShort(const Part& one, const Part& other)
{
    return one.text.size() <= dayDigits && other.text.size() <= dayDigits;
}

/// Three numbers, the year last.
bool endsWithYear(const Parts& parts)
{
    return isThreeNumbers(parts) && parts.part[2].text.size() == yearDigits &&
           areShort(parts.part[0], parts.part[1]);
}

WrittenDate inOrder(const Parts& parts, std::optional<DateOrder> order)
{
    const int first = parts.part[0].number;
    const int second = parts.part[1].number;
    const int year = parts.part[2].number;
    if (first == second) { // 5/5/2026 is one day in either order
        return dayOf(year, first, first);
    }
    if (!order) {
        return DateProblem::orderNotKnown;
    }
    switch (*order) {
    case DateOrder::dayMonthYear:
        return dayOf(year, second, first);
    case DateOrder::monthDayYear:
        return dayOf(year, first, second);
    case DateOrder::yearMonthDay:
        break;
    }
    return DateProblem::unreadable;
}

/// "9 Mar 2026", "Mar 9, 2026", "9-Mar-2026".
WrittenDate withMonthName(const Parts& parts)
{
    const bool dayFirst = parts.part[0].isNumber && !parts.part[1].isNumber;
    const bool monthFirst = !parts.part[0].isNumber && parts.part[1].isNumber;
    if ((!dayFirst && !monthFirst) || !parts.part[2].isNumber || !parts.part[0].gap.empty()) {
        return DateProblem::unreadable;
    }
    const int month = monthNamed(parts.part[dayFirst ? 1 : 0].text);
    const Part& day = parts.part[dayFirst ? 0 : 1];
    if (month == 0 || day.text.size() > dayDigits) {
        return DateProblem::unreadable;
    }
    if (parts.part[2].text.size() == 2) {
        return DateProblem::twoDigitYear;
    }
    return parts.part[2].text.size() == yearDigits ? dayOf(parts.part[2].number, month, day.number)
                                                   : WrittenDate(DateProblem::unreadable);
}

/// 20260309
WrittenDate basicFormat(const Part& part)
{
    constexpr int monthPlace = 100;
    constexpr int yearPlace = 10'000;
    return dayOf(part.number / yearPlace, part.number / monthPlace % monthPlace,
                 part.number % monthPlace);
}

WrittenDate dayIn(const Parts& parts, std::optional<DateOrder> order)
{
    if (isThreeNumbers(parts)) {
        const Part& first = parts.part[0];
        if (first.text.size() == yearDigits && areShort(parts.part[1], parts.part[2])) {
            return dayOf(first.number, parts.part[1].number, parts.part[2].number);
        }
        if (endsWithYear(parts)) {
            return inOrder(parts, order);
        }
        const bool allShort = areShort(first, parts.part[1]) && areShort(first, parts.part[2]);
        return allShort ? DateProblem::twoDigitYear : DateProblem::unreadable;
    }
    return parts.count == 3 ? withMonthName(parts) : DateProblem::unreadable;
}

} // namespace

WrittenDate writtenDate(std::string_view text, std::optional<DateOrder> order)
{
    const std::string_view whole = trimmed(text);
    if (whole.empty()) {
        return DateProblem::empty;
    }
    constexpr std::size_t basicDigits = 8;
    if (whole.size() >= basicDigits && std::ranges::all_of(whole.substr(0, basicDigits), isDigit)) {
        if (const auto problem = problemOfTime(whole.substr(basicDigits))) {
            return *problem;
        }
        return basicFormat(partsOf(whole.substr(0, basicDigits)).part[0]);
    }
    const Parts parts = partsOf(whole);
    const WrittenDate day = dayIn(parts, order);
    if (std::holds_alternative<Date>(day)) {
        if (const auto problem = problemOfTime(parts.rest)) {
            return *problem;
        }
    }
    return day;
}

void DateEvidence::note(std::string_view text)
{
    const Parts parts = partsOf(trimmed(text));
    if (!endsWithYear(parts) || parts.part[0].number == parts.part[1].number) {
        return;
    }
    m_needed = true;
    m_dayFirst = m_dayFirst || parts.part[0].number > monthsOfAYear;
    m_monthFirst = m_monthFirst || parts.part[1].number > monthsOfAYear;
}

std::optional<DateOrder> DateEvidence::order() const
{
    if (m_dayFirst == m_monthFirst) {
        return std::nullopt;
    }
    return m_dayFirst ? DateOrder::dayMonthYear : DateOrder::monthDayYear;
}

} // namespace quadrille
