// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"

namespace quadrille::tests
{

/// A clock that stands still until it is set.
class FixedClock : public Clock
{
public:
    explicit FixedClock(Moment moment)
        : m_moment(moment)
    {
    }
    Date today() const override { return std::chrono::floor<std::chrono::days>(m_moment); }
    Moment now() const override { return m_moment; }
    void set(Moment moment) { m_moment = moment; }

private:
    Moment m_moment;
};

inline Date day(int year, unsigned month, unsigned dayOfMonth)
{
    return Date(std::chrono::year_month_day(std::chrono::year(year), std::chrono::month(month),
                                            std::chrono::day(dayOfMonth)));
}

} // namespace quadrille::tests
