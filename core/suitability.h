// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a unit will do for muscle exercise at home, and why not.
#pragma once

#include "core/finding.h"
#include "core/stimulator.h"
#include "core/units.h"

#include <vector>

namespace quadrille
{

namespace suitability
{

/// The shortest of the usual on times; the off time must be able to exceed it.
inline constexpr Milliseconds usualOnTime{6000};
inline constexpr Source usualOnTimeSource{
    "Nussbaum et al. 2017, Physiother Can 69(5), table 7 (on 6 to 10 s, off 12 to 50 s)", false};

/// Large muscles, such as the quadriceps, are given 200 to 350 µs.
inline constexpr PhaseDuration leastPhaseForLargeMuscles = PhaseDuration::fromCount(200);
inline constexpr Source leastPhaseForLargeMusclesSource{
    "Cameron, table of parameters (200 to 350 µs for large muscles), read in a secondary text",
    false};

/// What a trial on the quadriceps used, 65 to 100 mA. That a unit which gives less is weak for
/// large muscles is our reading of it.
inline constexpr Amplitude leastOutputForLargeMuscles = Amplitude::fromCount(65'000);
inline constexpr Source leastOutputForLargeMusclesSource{
    "Wigerstad-Lossing et al. 1988 (65 to 100 mA on the quadriceps), read in a secondary text",
    false};

} // namespace suitability

/// Stops: charge that does not balance in any waveform of the unit, no work and rest times (common
/// practice). Where there is none, what speaks against the unit: an off time that can't be longer
/// than a usual on phase; phases too short, or too little output, for large muscles. The output is
/// held against the lower of what can be set and what the unit's papers state.
std::vector<Finding> suitabilityFindings(const Stimulator& stimulator);

} // namespace quadrille
