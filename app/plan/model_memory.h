// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/fatigue_memory.h"
#include "core/stimulator.h"

#include <deque>
#include <vector>

namespace quadrille::app
{

/// Forces over a session that were asked for last, kept like the ratios of a FatigueMemory.
class PeakMemory
{
public:
    const std::vector<double>& peaks(const Settings& settings, const Stimulator& unit);

private:
    struct Kept {
        Settings settings; ///< without amplitude, which does not enter the model
        RampHabit habit = RampHabit::includedInOnTime;
        CycleStart start = CycleStart::withOn;
        std::vector<double> peaks = {};
    };
    std::deque<Kept> m_kept; ///< the last one first
};

struct ModelMemory {
    FatigueMemory ratios;
    PeakMemory peaks;
};

} // namespace quadrille::app
