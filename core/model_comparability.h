// SPDX-License-Identifier: GPL-3.0-or-later
// Which differences between two settings the force–fatigue model may judge.
#pragma once

#include "core/field.h"
#include "core/settings.h"

#include <vector>

namespace quadrille
{

/// Why the model must not be used to compare two settings.
enum class ModelRefusal {
    frequencyDiffers,   ///< the model does not show the advantage of low frequency at equal force
                        ///< (Bickel, Gregory, Azuero, J Rehabil Res Dev 2012;49(2))
    onPhaseDiffers,     ///< it favours longer contractions at the same off : on ratio
    recruitmentDiffers, ///< it says that weaker recruitment tires less; recruited fibres do not
    rampsDiffer,        ///< another on phase or recruitment over time
    waveformDiffers,    ///< it knows no form of the pulse
    pulseFormDiffers,   ///< the same of gap, second phase, carrier and burst duty
};

/// Whether the model may compare two settings, and why not. It may where they differ in off time or
/// session length only. Amplitude, and phase duration unless it is asked for, do not enter: where
/// they differ too, the result says so.
struct ModelComparability {
    std::vector<ModelRefusal> refusals; ///< empty: may be compared
    bool amplitudeIgnored =
        false; ///< both amplitudes are known and differ, and the model takes no notice of it
    bool phaseDurationIgnored = false; ///< the same for phase durations
    bool isAllowed() const { return refusals.empty(); }
};
ModelComparability modelComparability(const Settings& a, RampHabit habitOfA, const Settings& b,
                                      RampHabit habitOfB, bool phaseDurationRecruits = false);

} // namespace quadrille
