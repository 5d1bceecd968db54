// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/suitability.h"

#include "core/limits.h"

#include <algorithm>
#include <optional>

namespace quadrille
{

namespace
{

Finding stop(FindingCode code, Field field)
{
    return {.code = code,
            .severity = Severity::stop,
            .field = field,
            .source = limits::commonPractice,
            .advice = Advice::chooseAnotherStimulator};
}

Finding attention(FindingCode code, Field field, Amount figure, Amount limit, const Source& source)
{
    return {.code = code,
            .severity = Severity::attention,
            .field = field,
            .figure = figure,
            .limit = limit,
            .source = source};
}

bool gives(const Stimulator& stimulator, bool (*which)(Waveform))
{
    return std::ranges::any_of(stimulator.waveforms, which);
}

bool isBalancedPulse(Waveform waveform)
{
    return isChargeBalanced(waveform) && waveform != Waveform::kilohertzBursts;
}

bool isBurst(Waveform waveform)
{
    return waveform == Waveform::kilohertzBursts;
}

/// The shortest on phase at an on time as usual as the unit allows.
Milliseconds usualOnPhase(const Stimulator& stimulator)
{
    const Milliseconds onTime =
        std::clamp(suitability::usualOnTime, stimulator.onTime.least,
                   std::max(stimulator.onTime.least, stimulator.onTime.most));
    return stimulator.rampHabit == RampHabit::addedToOnTime
               ? stimulator.rampUp.least + onTime + stimulator.rampDown.least
               : onTime;
}

std::optional<Finding> restFinding(const Stimulator& stimulator)
{
    const Milliseconds onPhase = usualOnPhase(stimulator);
    if (stimulator.offTime.most > onPhase) {
        return std::nullopt;
    }
    return attention(FindingCode::offNeverLongerThanOn, Field::offTime,
                     amountOf(stimulator.offTime.most), amountOf(onPhase),
                     suitability::usualOnTimeSource);
}

/// Bursts have no phase duration to be set.
std::optional<Finding> phaseFinding(const Stimulator& stimulator)
{
    const bool pulsesOnly = gives(stimulator, isBalancedPulse) && !gives(stimulator, isBurst);
    if (!pulsesOnly || stimulator.phaseDuration.most >= suitability::leastPhaseForLargeMuscles) {
        return std::nullopt;
    }
    return attention(FindingCode::phaseShortForLargeMuscles, Field::phaseDuration,
                     amountOf(stimulator.phaseDuration.most),
                     amountOf(suitability::leastPhaseForLargeMuscles),
                     suitability::leastPhaseForLargeMusclesSource);
}

std::optional<Finding> outputFinding(const Stimulator& stimulator)
{
    const Amplitude output = std::min(stimulator.amplitude.most,
                                      stimulator.mostOutput.value_or(stimulator.amplitude.most));
    if (output >= suitability::leastOutputForLargeMuscles) {
        return std::nullopt;
    }
    return attention(FindingCode::outputLowForLargeMuscles, Field::mostOutput, amountOf(output),
                     amountOf(suitability::leastOutputForLargeMuscles),
                     suitability::leastOutputForLargeMusclesSource);
}

} // namespace

std::vector<Finding> suitabilityFindings(const Stimulator& stimulator)
{
    std::vector<Finding> findings;
    if (!stimulator.waveforms.empty() && !gives(stimulator, isChargeBalanced)) {
        findings.push_back(stop(FindingCode::directCurrentUnsuitable, Field::outputType));
    }
    if (!stimulator.hasWorkRestCycles) {
        findings.push_back(stop(FindingCode::noWorkRestCycles, Field::stimulator));
    }
    if (!findings.empty()) {
        return findings; // what will not do need not be weighed further
    }
    for (const auto& finding :
         {restFinding(stimulator), phaseFinding(stimulator), outputFinding(stimulator)}) {
        if (finding) {
            findings.push_back(*finding);
        }
    }
    return findings;
}

} // namespace quadrille
