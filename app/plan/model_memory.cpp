// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/model_memory.h"

#include "core/block_fatigue.h"

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr std::size_t mostCurves = 8;

} // namespace

const std::vector<double>& PeakMemory::peaks(const Settings& settings, const Stimulator& unit)
{
    Kept wanted{settings, unit.rampHabit, unit.cycleStart};
    wanted.settings.amplitude = {};
    const auto found = std::ranges::find_if(m_kept, [&](const Kept& kept) {
        return kept.settings == wanted.settings && kept.habit == wanted.habit &&
               kept.start == wanted.start;
    });
    if (found != m_kept.end()) {
        wanted.peaks = std::move(found->peaks);
        m_kept.erase(found);
    } else {
        wanted.peaks = peakShares(settings, unit);
    }
    m_kept.push_front(std::move(wanted));
    if (m_kept.size() > mostCurves) {
        m_kept.pop_back();
    }
    return m_kept.front().peaks;
}

} // namespace quadrille::app
