// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/system_clock.h"

#include "app/words/quantity_text.h"

#include <QDate>

namespace quadrille::app
{

SystemClock::SystemClock(std::optional<Date> today)
    : m_today(today)
{
}

Date SystemClock::today() const
{
    return m_today ? *m_today : fromQDate(QDate::currentDate());
}

Moment SystemClock::now() const
{
    const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    if (!m_today) {
        return now;
    }
    return Moment(*m_today) + (now - std::chrono::floor<std::chrono::days>(now));
}

} // namespace quadrille::app
