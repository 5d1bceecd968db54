// SPDX-License-Identifier: GPL-3.0-or-later
// Predictions that were made are kept, so that a figure on a screen is computed once for each
// setting and never again.
#pragma once

#include "core/fatigue_prediction.h"

#include <cstddef>
#include <list>
#include <map>
#include <tuple>

namespace quadrille
{

/// Keeps the predictions asked for last. The key is what enters the model and nothing else: another
/// amplitude finds the same prediction. Not for several threads at once.
class FatigueMemory
{
public:
    /// Keeps at most `most` ≥ 1 predictions.
    explicit FatigueMemory(std::size_t most = 4096);

    /// As predictFatigue(); errors are not kept.
    Result<FatiguePrediction> predict(const Settings& settings, RampHabit habit,
                                      const FatigueOptions& options = {});
    std::size_t size() const { return m_kept.size(); }
    /// How many predictions had to be computed.
    std::size_t computed() const { return m_computed; }

private:
    using Key = std::tuple<const FatigueParameters*, bool, Waveform, RampHabit, PulseFrequency,
                           PhaseDuration, Milliseconds, Milliseconds, Milliseconds, Milliseconds,
                           Milliseconds>;
    static Key keyOf(const Settings& settings, RampHabit habit, const FatigueOptions& options);

    std::size_t m_most;
    std::size_t m_computed = 0;
    std::list<std::pair<Key, FatiguePrediction>> m_kept; ///< asked for last first
    std::map<Key, std::list<std::pair<Key, FatiguePrediction>>::iterator> m_places;
};

} // namespace quadrille
