// SPDX-License-Identifier: GPL-3.0-or-later
// Parameters of the force–fatigue model, as named sets with their source. Another published set is
// added as data.
#pragma once

#include "core/finding.h"

#include <string_view>
#include <vector>

namespace quadrille
{

/// One published set of group values. Times in ms, force in N, as in the model's equations
/// (force_fatigue_model.h).
struct FatigueParameters {
    std::string_view name;
    Source source;
    double activationTime = 0.0;           ///< rise and decay of the activation, ms
    double forceScaleAtRest = 0.0;         ///< A, N/ms
    double halfActivationAtRest = 0.0;     ///< Km, activation at half of the full effect
    double relaxationTimeAtRest = 0.0;     ///< tau 1, ms
    double crossBridgeTime = 0.0;          ///< tau 2, ms, constant
    double recoveryTime = 0.0;             ///< tau fat, ms
    double forceScalePerImpulse = 0.0;     ///< alpha A, 1/ms²
    double halfActivationPerImpulse = 0.0; ///< alpha Km, 1/(ms N)
    double relaxationPerImpulse = 0.0;     ///< alpha tau 1, 1/N
    double pulseAfterPulse = 0.0;          ///< R0 − Km
    double leastPhaseDuration = 0.0;       ///< µs; below it nothing is recruited
    double phaseDurationScale = 0.0;       ///< µs
    double fullPhaseDuration = 0.0;        ///< µs; all is recruited
    friend bool operator==(const FatigueParameters&, const FatigueParameters&) = default;
};

/// Knee extensors of able-bodied adults. Ding, Wexler, Binder-Macleod, J Appl Physiol 2000;88:917,
/// Muscle Nerve 2002;26:477 and J Electromyogr Kinesiol 2003;13:575; the influence of phase
/// duration after Ding et al., Muscle Nerve 2007;36:214. The values were read in later papers that
/// quote these, not in the primary texts; alpha Km is taken per second (the printed unit makes Km
/// leave its physiological range), tau 2 as the value nearest to the published loss of force.
const FatigueParameters& ableBodiedKneeExtensors();

/// All sets, the usual one first.
const std::vector<FatigueParameters>& fatigueParameterSets();

} // namespace quadrille
