// SPDX-License-Identifier: GPL-3.0-or-later
// Days, course weeks and weekdays (proleptic Gregorian calendar, no time zones). Today is always
// an argument: only a Clock knows it.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace quadrille
{

using Date = std::chrono::sys_days;
using Weekday = std::chrono::weekday;

/// A moment, to the second, UTC; what the change record stores.
using Moment = std::chrono::sys_seconds;

/// Where a program asks for the day and the moment. Passed in, so that tests and the demo stand
/// still.
class Clock
{
public:
    virtual ~Clock() = default;
    /// Today in the practice's own calendar.
    virtual Date today() const = 0;
    virtual Moment now() const = 0;
};

/// "2026-03-09"; the form in which dates are stored and exchanged (ISO 8601 calendar date).
std::string isoDate(Date date);
/// Reads exactly "YYYY-MM-DD"; nothing when it is no such date (30 February, other order, blanks).
std::optional<Date> dateFromIso(std::string_view text);
/// "2026-03-09T10:42:00Z" (ISO 8601, UTC).
std::string isoMoment(Moment moment);
/// Reads exactly what isoMoment writes.
std::optional<Moment> momentFromIso(std::string_view text);

/// A set of weekdays; rest days are the ones not in it.
class WeekdaySet
{
public:
    constexpr WeekdaySet() = default;
    /// Bit n is ISO weekday n + 1 (bit 0 Monday … bit 6 Sunday); other bits are dropped.
    static constexpr WeekdaySet fromBits(unsigned bits) { return WeekdaySet(bits & 0x7FU); }
    static constexpr WeekdaySet everyDay() { return WeekdaySet(0x7FU); }
    static constexpr WeekdaySet mondayToFriday() { return WeekdaySet(0x1FU); }

    constexpr unsigned bits() const { return m_bits; }
    constexpr bool contains(Weekday day) const { return (m_bits & bitOf(day)) != 0; }
    constexpr int size() const { return __builtin_popcount(m_bits); }
    constexpr WeekdaySet with(Weekday day) const { return WeekdaySet(m_bits | bitOf(day)); }
    constexpr WeekdaySet without(Weekday day) const { return WeekdaySet(m_bits & ~bitOf(day)); }
    friend constexpr bool operator==(WeekdaySet, WeekdaySet) = default;

private:
    constexpr explicit WeekdaySet(unsigned bits)
        : m_bits(bits)
    {
    }
    static constexpr unsigned bitOf(Weekday day) { return 1U << (day.iso_encoding() - 1U); }
    unsigned m_bits = 0;
};

/// A week of a course, counted from 1.
struct CourseWeek {
    int number = 1;
    friend auto operator<=>(CourseWeek, CourseWeek) = default;
};

/// The course week of a day: week n is days 7(n−1)+1 … 7n from the start date. Nothing before the
/// start.
std::optional<CourseWeek> courseWeekOf(Date start, Date day);
/// The first day of a course week.
Date firstDayOf(Date start, CourseWeek week);

/// The same day of the month so many months later; the month's last day where it has none such (31
/// August and six months: the last of February).
Date monthsLater(Date day, std::chrono::months months);
/// Whole years lived on `today`; nothing when born later. Someone born on 29 February turns older
/// on 1 March in other years.
std::optional<int> ageInYears(Date birth, Date today);

} // namespace quadrille
