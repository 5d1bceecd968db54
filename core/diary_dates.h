// SPDX-License-Identifier: GPL-3.0-or-later
// Days as files write them. ISO 8601 (2026-03-09, 20260309) and names of months say themselves what
// is what; 3/4/2026 does not, and the order of its numbers is never guessed.
#pragma once

#include "core/calendar.h"

#include <optional>
#include <string_view>
#include <variant>

namespace quadrille
{

/// In which order day, month and year stand where all three are numbers.
enum class DateOrder { dayMonthYear, monthDayYear, yearMonthDay };

/// Why a text is no day.
enum class DateProblem {
    empty,
    unreadable,    ///< no form of a day that is known, or not the order asked for
    noSuchDay,     ///< 30 February, or a year outside 1900 … 2199
    twoDigitYear,  ///< 9/3/26: the century would be a guess
    orderNotKnown, ///< 3/4/2026 without an order
    withZone,      ///< a moment with a time zone, whose day depends on where one stands
};

using WrittenDate = std::variant<Date, DateProblem>;

/// Reads a day; blanks around it and a time of day behind it are left aside. `order` is needed for
/// three numbers whose year does not stand first.
WrittenDate writtenDate(std::string_view text, std::optional<DateOrder> order);

/// What the dates of one file say about their order, gathered cell by cell.
class DateEvidence
{
public:
    void note(std::string_view text);
    /// The order that the file itself shows: a number above 12 can only be a day. Nothing where no
    /// date shows it or where dates contradict each other.
    std::optional<DateOrder> order() const;
    /// The file has dates that can't be read without an order, and does not show one.
    bool isOpen() const { return m_needed && !order(); }
    /// Some dates have the day first, others the month.
    bool contradictsItself() const { return m_dayFirst && m_monthFirst; }

private:
    bool m_needed = false;
    bool m_dayFirst = false;
    bool m_monthFirst = false;
};

} // namespace quadrille
