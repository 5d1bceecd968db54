// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fatigue_memory.h"

#include <algorithm>

namespace quadrille
{

FatigueMemory::FatigueMemory(std::size_t most)
    : m_most(std::max<std::size_t>(most, 1))
{
}

FatigueMemory::Key FatigueMemory::keyOf(const Settings& settings, RampHabit habit,
                                        const FatigueOptions& options)
{
    const bool recruits = options.phaseDurationRecruits;
    return {options.parameters,      recruits,
            settings.waveform,       habit,
            settings.pulseFrequency, recruits ? settings.phaseDuration : PhaseDuration(),
            settings.onTime,         settings.offTime,
            settings.rampUp,         settings.rampDown,
            settings.sessionLength};
}

Result<FatiguePrediction> FatigueMemory::predict(const Settings& settings, RampHabit habit,
                                                 const FatigueOptions& options)
{
    // Whether settings can run rests on more than enters the model (overlapping pulses), so it is
    // asked each time.
    const Result<SessionTiming> timing = sessionTiming(settings, habit);
    if (!timing) {
        return timing.error();
    }
    const Key key = keyOf(settings, habit, options);
    const auto place = m_places.find(key);
    if (place != m_places.end()) {
        m_kept.splice(m_kept.begin(), m_kept, place->second);
        return m_kept.front().second;
    }
    const Result<FatiguePrediction> prediction = predictFatigue(settings, habit, options);
    if (!prediction) {
        return prediction.error();
    }
    ++m_computed;
    m_kept.emplace_front(key, *prediction);
    m_places[key] = m_kept.begin();
    if (m_kept.size() > m_most) {
        m_places.erase(m_kept.back().first);
        m_kept.pop_back();
    }
    return *prediction;
}

} // namespace quadrille
