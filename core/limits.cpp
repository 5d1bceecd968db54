// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/limits.h"

namespace quadrille
{

namespace
{

template <class FigureType>
Finding attention(FindingCode code, FigureType figure, FigureType limit, Source source,
                  Advice advice)
{
    return {.code = code,
            .severity = Severity::attention,
            .field = Field::amplitudeCeiling,
            .figure = amountOf(figure),
            .limit = amountOf(limit),
            .source = source,
            .advice = advice};
}

Finding shortTime(FindingCode code, Field field, Milliseconds time)
{
    return {.code = code,
            .severity = Severity::attention,
            .field = field,
            .figure = amountOf(time),
            .limit = amountOf(limits::leastOnAndOff),
            .source = limits::leastOnAndOffSource,
            .advice = field == Field::offTime ? Advice::lengthenOff : Advice::none};
}

} // namespace

namespace limits
{

RmsCurrent mostRmsCurrent(double frequencyHertz)
{
    if (frequencyHertz <= 400.0) {
        return RmsCurrent(50.0);
    }
    return RmsCurrent(frequencyHertz <= 1500.0 ? 80.0 : 100.0);
}

} // namespace limits

std::vector<Finding> doseFindings(const Settings& settings, const Dose& dose)
{
    std::vector<Finding> findings;
    if (dose.currentDensity > limits::attentionCurrentDensity) {
        findings.push_back(attention(
            FindingCode::currentDensityHigh, dose.currentDensity, limits::attentionCurrentDensity,
            limits::attentionCurrentDensitySource, Advice::largerPadOrLessAmplitude));
    }
    const RmsCurrent mostRms = limits::mostRmsCurrent(settings.pulseFrequency.shown());
    if (dose.rmsTrain > mostRms) {
        findings.push_back(attention(FindingCode::rmsCurrentHigh, dose.rmsTrain, mostRms,
                                     limits::mostRmsCurrentSource, Advice::lessAmplitude));
    }
    if (dose.powerDensityTrain >= limits::mostPowerDensity) { // the guidance says: less than
        findings.push_back(attention(FindingCode::powerDensityHigh, dose.powerDensityTrain,
                                     limits::mostPowerDensity, limits::mostPowerDensitySource,
                                     Advice::largerPadOrLessAmplitude));
    }
    if (dose.pulseEnergy && *dose.pulseEnergy > limits::mostPulseEnergy) {
        findings.push_back(attention(FindingCode::pulseEnergyHigh, *dose.pulseEnergy,
                                     limits::mostPulseEnergy, limits::mostPulseEnergySource,
                                     Advice::lessAmplitude));
    }
    return findings;
}

std::vector<Finding> timingFindings(const SessionTiming& timing)
{
    std::vector<Finding> findings;
    if (timing.onPhase < limits::leastOnAndOff) {
        findings.push_back(
            shortTime(FindingCode::onTimeUnderOneSecond, Field::onTime, timing.onPhase));
    }
    if (timing.offTime < limits::leastOnAndOff) {
        findings.push_back(
            shortTime(FindingCode::offTimeUnderOneSecond, Field::offTime, timing.offTime));
    } else if (timing.offTime < timing.onPhase) {
        findings.push_back({.code = FindingCode::offShorterThanOn,
                            .severity = Severity::attention,
                            .field = Field::offTime,
                            .figure = amountOf(timing.offTime),
                            .limit = amountOf(timing.onPhase),
                            .source = limits::commonPractice,
                            .advice = Advice::lengthenOff});
    }
    if (timing.cutContraction > Milliseconds(0)) {
        findings.push_back({.code = FindingCode::lastContractionCut,
                            .severity = Severity::note,
                            .field = Field::sessionLength,
                            .figure = amountOf(timing.cutContraction),
                            .limit = amountOf(timing.onPhase),
                            .source = {},
                            .advice = Advice::none});
    }
    return findings;
}

} // namespace quadrille
