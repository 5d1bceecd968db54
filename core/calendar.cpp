// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/calendar.h"

#include <array>
#include <charconv>
#include <cstdio>

namespace quadrille
{

namespace
{

std::optional<int> digits(std::string_view text)
{
    int value = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') {
            return std::nullopt;
        }
        value = value * 10 + (c - '0');
    }
    return value;
}

} // namespace

std::string isoDate(Date date)
{
    const std::chrono::year_month_day day{date};
    std::array<char, 32> text{};
    const int length = std::snprintf(text.data(), text.size(), "%04d-%02u-%02u", int(day.year()),
                                     unsigned(day.month()), unsigned(day.day()));
    return {text.data(), static_cast<std::size_t>(length)};
}

std::optional<Date> dateFromIso(std::string_view text)
{
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
        return std::nullopt;
    }
    const auto year = digits(text.substr(0, 4));
    const auto month = digits(text.substr(5, 2));
    const auto day = digits(text.substr(8, 2));
    if (!year || !month || !day) {
        return std::nullopt;
    }
    const std::chrono::year_month_day date{std::chrono::year(*year),
                                           std::chrono::month(static_cast<unsigned>(*month)),
                                           std::chrono::day(static_cast<unsigned>(*day))};
    if (!date.ok()) {
        return std::nullopt;
    }
    return Date(date);
}

std::string isoMoment(Moment moment)
{
    const Date day = std::chrono::floor<std::chrono::days>(moment);
    const std::chrono::hh_mm_ss time(moment - day);
    std::array<char, 16> text{};
    const int length =
        std::snprintf(text.data(), text.size(), "T%02d:%02d:%02dZ", int(time.hours().count()),
                      int(time.minutes().count()), int(time.seconds().count()));
    return isoDate(day) + std::string(text.data(), static_cast<std::size_t>(length));
}

std::optional<Moment> momentFromIso(std::string_view text)
{
    if (text.size() != 20 || text[10] != 'T' || text[13] != ':' || text[16] != ':' ||
        text[19] != 'Z') {
        return std::nullopt;
    }
    const auto day = dateFromIso(text.substr(0, 10));
    const auto hour = digits(text.substr(11, 2));
    const auto minute = digits(text.substr(14, 2));
    const auto second = digits(text.substr(17, 2));
    if (!day || !hour || !minute || !second || *hour > 23 || *minute > 59 || *second > 59) {
        return std::nullopt;
    }
    return Moment(*day) + std::chrono::hours(*hour) + std::chrono::minutes(*minute) +
           std::chrono::seconds(*second);
}

std::optional<CourseWeek> courseWeekOf(Date start, Date day)
{
    if (day < start) {
        return std::nullopt;
    }
    return CourseWeek{static_cast<int>((day - start).count() / 7) + 1};
}

Date firstDayOf(Date start, CourseWeek week)
{
    return start + std::chrono::days(7 * (week.number - 1));
}

std::optional<int> ageInYears(Date birth, Date today)
{
    if (today < birth) {
        return std::nullopt;
    }
    const std::chrono::year_month_day born{birth};
    const std::chrono::year_month_day now{today};
    int years = int(now.year()) - int(born.year());
    if (now.month() < born.month() || (now.month() == born.month() && now.day() < born.day())) {
        --years;
    }
    return years;
}

Date monthsLater(Date day, std::chrono::months months)
{
    const std::chrono::year_month_day later = std::chrono::year_month_day(day) + months;
    return later.ok() ? Date(later) : Date(later.year() / later.month() / std::chrono::last);
}

} // namespace quadrille
