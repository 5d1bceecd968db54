// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"

#include <optional>

namespace quadrille::app
{

/// The machine's clock, or the machine's time of day on a day of choice (--today).
class SystemClock : public Clock
{
public:
    explicit SystemClock(std::optional<Date> today = std::nullopt);
    Date today() const override;
    Moment now() const override;

private:
    std::optional<Date> m_today;
};

} // namespace quadrille::app
