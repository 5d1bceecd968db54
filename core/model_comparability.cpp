// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model_comparability.h"

namespace quadrille
{

namespace
{

Milliseconds onPhase(const Settings& settings, RampHabit habit)
{
    return habit == RampHabit::includedInOnTime
               ? settings.onTime
               : settings.onTime + settings.rampUp + settings.rampDown;
}

} // namespace

ModelComparability modelComparability(const Settings& a, RampHabit habitOfA, const Settings& b,
                                      RampHabit habitOfB, bool phaseDurationRecruits)
{
    ModelComparability result;
    const auto refuseIf = [&result](bool differs, ModelRefusal refusal) {
        if (differs) {
            result.refusals.push_back(refusal);
        }
    };
    refuseIf(a.pulseFrequency != b.pulseFrequency, ModelRefusal::frequencyDiffers);
    refuseIf(onPhase(a, habitOfA) != onPhase(b, habitOfB), ModelRefusal::onPhaseDiffers);
    refuseIf(phaseDurationRecruits && a.phaseDuration != b.phaseDuration,
             ModelRefusal::recruitmentDiffers);
    refuseIf(a.rampUp != b.rampUp || a.rampDown != b.rampDown, ModelRefusal::rampsDiffer);
    refuseIf(a.waveform != b.waveform, ModelRefusal::waveformDiffers);
    result.phaseDurationIgnored = !phaseDurationRecruits && a.phaseDuration != b.phaseDuration;
    const auto amplitudeOfA = doseAmplitude(a.amplitude);
    const auto amplitudeOfB = doseAmplitude(b.amplitude);
    result.amplitudeIgnored = amplitudeOfA && amplitudeOfB && amplitudeOfA != amplitudeOfB;
    return result;
}

} // namespace quadrille
