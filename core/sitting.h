// SPDX-License-Identifier: GPL-3.0-or-later
// What one sitting of a block delivers, whole or cut short.
#pragma once

#include "core/plan.h"
#include "core/session_timing.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace quadrille
{

/// A dose of exercise in the three ways in which it is counted.
struct SittingDose {
    Milliseconds time{};           ///< on the unit
    std::int64_t contractions = 0; ///< completed ones
    Milliseconds onTime{};         ///< inside on phases, a cut one included
    friend bool operator==(const SittingDose&, const SittingDose&) = default;
    SittingDose& operator+=(const SittingDose& other);
};
SittingDose operator*(const SittingDose& dose, int times);

/// One sitting of a block. Sites at once take as long as the longest of them, and the most of any
/// site counts; in turn they follow one another in the block's order, and their sum counts.
class Sitting
{
public:
    /// Nothing without sites, or where the settings of one cannot run (no plan is issued with such
    /// settings).
    static std::optional<Sitting> of(const Block& block, RampHabit habit,
                                     CycleStart start = CycleStart::withOn);

    const SittingDose& whole() const { return m_whole; }
    /// What has been delivered when the patient ends after `time`: at most the whole, nothing below
    /// zero.
    SittingDose after(Milliseconds time) const;

private:
    Sitting(SiteOrder order, std::vector<SessionTiming> sites);

    SiteOrder m_order;
    std::vector<SessionTiming> m_sites;
    SittingDose m_whole;
};

} // namespace quadrille
