// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model_comparability.h"

#include <algorithm>
#include <array>

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

/// Of two settings with the same waveform: whatever shapes its pulse but the first phase. What the
/// waveform leaves aside differs from nothing.
bool hasAnotherForm(const Settings& a, const Settings& b)
{
    return std::ranges::any_of(std::array{Field::interphaseGap, Field::secondPhaseDuration,
                                          Field::carrierFrequency, Field::burstDuty},
                               [&](Field field) {
                                   return appliesTo(field, a.waveform) &&
                                          countIn(a, field) != countIn(b, field);
                               });
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
    refuseIf(a.waveform == b.waveform && hasAnotherForm(a, b), ModelRefusal::pulseFormDiffers);
    result.phaseDurationIgnored = !phaseDurationRecruits && a.phaseDuration != b.phaseDuration;
    const auto amplitudeOfA = doseAmplitude(a.amplitude);
    const auto amplitudeOfB = doseAmplitude(b.amplitude);
    result.amplitudeIgnored = amplitudeOfA && amplitudeOfB && amplitudeOfA != amplitudeOfB;
    return result;
}

} // namespace quadrille
