// SPDX-License-Identifier: GPL-3.0-or-later
// The reference table of sessions: 22 settings with their timing and dose, computed independently
// of this program from the rules of the trade (two solvers agreeing to 1e-12), printed with 8
// significant digits. Whole numbers must be equal, the rest within 1e-7 relative.
#pragma once

#include "tests/support/reference_table.h"

#include "core/session_timing.h"
#include "core/settings.h"

#include <cmath>
#include <gtest/gtest.h>
#include <string>

namespace quadrille::test
{

inline ReferenceTable referenceSessions()
{
    return ReferenceTable::fromFile(QUADRILLE_TEST_REFERENCE "/model_cases.csv");
}

inline Settings settingsOfCase(const ReferenceTable& table, std::size_t row)
{
    Settings settings;
    settings.pulseFrequency = PulseFrequency::fromCount(table.thousandths(row, "frequency_hz"));
    settings.phaseDuration =
        PhaseDuration::fromCount(table.thousandths(row, "phase_duration_us") / 1000);
    settings.amplitude.lastTolerated = Amplitude::fromCount(table.thousandths(row, "amplitude_ma"));
    settings.onTime = Milliseconds(table.thousandths(row, "on_s"));
    settings.offTime = Milliseconds(table.thousandths(row, "off_s"));
    settings.rampUp = Milliseconds(table.thousandths(row, "ramp_up_s"));
    settings.rampDown = Milliseconds(table.thousandths(row, "ramp_down_s"));
    settings.sessionLength = Milliseconds(table.thousandths(row, "session_s"));
    return settings;
}

inline RampHabit habitOfCase(const ReferenceTable& table, std::size_t row)
{
    return table.text(row, "ramps_included") == "1" ? RampHabit::includedInOnTime
                                                    : RampHabit::addedToOnTime;
}

/// Compares a computed figure with a cell, within 1e-7 relative.
inline void expectCell(const ReferenceTable& table, std::size_t row, const std::string& column,
                       double computed)
{
    const double expected = table.number(row, column);
    EXPECT_NEAR(computed, expected, 1e-7 * std::abs(expected)) << column;
}

/// Compares a counted figure with a cell; they must be equal.
inline void expectCount(const ReferenceTable& table, std::size_t row, const std::string& column,
                        std::int64_t counted)
{
    EXPECT_EQ(std::to_string(counted), table.text(row, column)) << column;
}

} // namespace quadrille::test
