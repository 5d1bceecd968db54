// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/settings.h"

#include <algorithm>
#include <iterator>

namespace quadrille
{

namespace
{

constexpr std::int64_t hourInMs = 3'600'000;

template <class Tag>
std::optional<std::int64_t> countOf(const std::optional<Quantity<Tag>>& quantity)
{
    return quantity ? std::optional(quantity->count()) : std::nullopt;
}

template <class Tag>
void set(std::optional<Quantity<Tag>>& target, std::optional<std::int64_t> count)
{
    target = count ? std::optional(Quantity<Tag>::fromCount(*count)) : std::nullopt;
}

template <class Tag>
void set(Quantity<Tag>& target, std::optional<std::int64_t> count)
{
    if (count) {
        target = Quantity<Tag>::fromCount(*count);
    }
}

void set(Milliseconds& target, std::optional<std::int64_t> count)
{
    if (count) {
        target = Milliseconds(*count);
    }
}

Finding stop(FindingCode code, Field field, Advice advice, std::optional<Amount> figure = {},
             std::optional<Amount> limit = {})
{
    return {.code = code,
            .severity = Severity::stop,
            .field = field,
            .figure = figure,
            .limit = limit,
            .source = {},
            .advice = advice};
}

/// Values that the arithmetic cannot take, and optional ones that this waveform needs.
std::vector<Finding> boundsFindings(const Settings& settings)
{
    std::vector<Finding> findings;
    for (const Field field : standardAskingOrder()) {
        if (!appliesTo(field, settings.waveform)) {
            continue;
        }
        const auto count = countIn(settings, field);
        if (!count) {
            const bool mayBeUnknown =
                field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling;
            if (!mayBeUnknown) {
                findings.push_back(stop(FindingCode::notFilled, field, Advice::fillIn));
            }
            continue;
        }
        const CountRange bounds = arithmeticBounds(field);
        if (!bounds.contains(*count)) {
            const std::int64_t limit = *count < bounds.least ? bounds.least : bounds.most;
            findings.push_back(stop(FindingCode::outsideArithmetic, field, Advice::setToLimit,
                                    amountIn(field, *count), amountIn(field, limit)));
        }
    }
    return findings;
}

/// Pulse frequency × (first phase + gap + second phase) must not exceed 1. This also catches phase
/// durations that were meant in µs and typed in ms.
std::optional<Finding> overlapFinding(const Settings& settings)
{
    if (settings.waveform == Waveform::kilohertzBursts ||
        settings.waveform == Waveform::directCurrent) {
        return std::nullopt;
    }
    std::int64_t pulseUs = settings.phaseDuration.count();
    if (settings.waveform == Waveform::symmetricBiphasic) {
        pulseUs = 2 * pulseUs + settings.interphaseGap.count();
    } else if (settings.waveform == Waveform::asymmetricBalancedBiphasic) {
        pulseUs += settings.interphaseGap.count() + settings.secondPhaseDuration->count();
    }
    // mHz × µs = 1e-9
    if (settings.pulseFrequency.count() * pulseUs <= 1'000'000'000) {
        return std::nullopt;
    }
    const double periodUs = 1e9 / static_cast<double>(settings.pulseFrequency.count());
    return stop(FindingCode::pulsesOverlap, Field::phaseDuration, Advice::lowerFrequencyOrPhase,
                Amount{static_cast<double>(pulseUs), Unit::microsecond},
                Amount{periodUs, Unit::microsecond});
}

/// In an asymmetric pulse the second phase is the longer and lower one; were it the shorter, its
/// current would exceed the amplitude that is set, which is the first phase's.
std::optional<Finding> secondPhaseFinding(const Settings& settings)
{
    if (settings.waveform != Waveform::asymmetricBalancedBiphasic ||
        *settings.secondPhaseDuration >= settings.phaseDuration) {
        return std::nullopt;
    }
    return stop(FindingCode::outsideArithmetic, Field::secondPhaseDuration, Advice::setToLimit,
                amountOf(*settings.secondPhaseDuration), amountOf(settings.phaseDuration));
}

std::vector<Finding> timeFindings(const Settings& settings, RampHabit habit, CycleStart start)
{
    std::vector<Finding> findings;
    const Milliseconds ramps = settings.rampUp + settings.rampDown;
    const bool included = habit == RampHabit::includedInOnTime;
    const Milliseconds onPhase = included ? settings.onTime : settings.onTime + ramps;
    if (included && ramps > settings.onTime) {
        findings.push_back(stop(FindingCode::noPlateauLeft, Field::rampUp,
                                Advice::shortenRampsOrLengthenOn, amountOf(ramps),
                                amountOf(settings.onTime)));
    } else if (included && ramps == settings.onTime) {
        Finding finding =
            stop(FindingCode::plateauIsZero, Field::rampUp, Advice::shortenRampsOrLengthenOn,
                 amountOf(ramps), amountOf(settings.onTime));
        finding.severity = Severity::attention;
        findings.push_back(finding);
    }
    if (settings.offTime == Milliseconds(0)) {
        findings.push_back(stop(FindingCode::noOffTime, Field::offTime, Advice::lengthenOff));
    }
    const Milliseconds firstEnds =
        onPhase + (start == CycleStart::withOff ? settings.offTime : Milliseconds(0));
    if (settings.sessionLength < firstEnds) {
        findings.push_back(stop(FindingCode::sessionShorterThanOn, Field::sessionLength,
                                Advice::lengthenSession, amountOf(settings.sessionLength),
                                amountOf(firstEnds)));
    }
    return findings;
}

/// Tells whether the unit can be set to this value, and to which one it can.
std::optional<Finding> rangeFinding(Field field, std::int64_t count, const CountRange& range)
{
    Finding finding{.code = FindingCode::outsideStimulator,
                    .severity = Severity::attention,
                    .field = field,
                    .figure = amountIn(field, count)};
    if (!range.contains(count)) {
        finding.limit = amountIn(field, count < range.least ? range.least : range.most);
        finding.advice = Advice::setToLimit;
        return finding;
    }
    if (!range.isOnStep(count)) {
        finding.code = FindingCode::offStep;
        finding.limit = amountIn(field, range.nearestStep(count));
        finding.advice = Advice::setToNearestStep;
        return finding;
    }
    return std::nullopt;
}

} // namespace

Settings presetSettings(const Stimulator& stimulator)
{
    Settings settings;
    settings.waveform =
        stimulator.waveforms.empty() ? Waveform::symmetricBiphasic : stimulator.waveforms.front();
    for (const Field field : standardAskingOrder()) {
        if (field == Field::lastToleratedAmplitude || field == Field::amplitudeCeiling) {
            continue;
        }
        if (const auto range = rangeOf(stimulator, field)) {
            setCount(settings, field, range->preset);
        }
    }
    return settings;
}

bool appliesTo(Field field, Waveform waveform)
{
    switch (field) {
    case Field::phaseDuration:
        return waveform != Waveform::kilohertzBursts && waveform != Waveform::directCurrent;
    case Field::interphaseGap:
        return waveform == Waveform::symmetricBiphasic ||
               waveform == Waveform::asymmetricBalancedBiphasic;
    case Field::secondPhaseDuration:
        return waveform == Waveform::asymmetricBalancedBiphasic;
    case Field::carrierFrequency:
    case Field::burstDuty:
        return waveform == Waveform::kilohertzBursts;
    default:
        return true;
    }
}

std::optional<std::int64_t> countIn(const Settings& settings, Field field)
{
    switch (field) {
    case Field::pulseFrequency:
        return settings.pulseFrequency.count();
    case Field::phaseDuration:
        return settings.phaseDuration.count();
    case Field::interphaseGap:
        return settings.interphaseGap.count();
    case Field::secondPhaseDuration:
        return countOf(settings.secondPhaseDuration);
    case Field::carrierFrequency:
        return countOf(settings.carrierFrequency);
    case Field::burstDuty:
        return countOf(settings.burstDuty);
    case Field::onTime:
        return settings.onTime.count();
    case Field::offTime:
        return settings.offTime.count();
    case Field::rampUp:
        return settings.rampUp.count();
    case Field::rampDown:
        return settings.rampDown.count();
    case Field::sessionLength:
        return settings.sessionLength.count();
    case Field::lastToleratedAmplitude:
        return countOf(settings.amplitude.lastTolerated);
    case Field::amplitudeCeiling:
        return countOf(settings.amplitude.ceiling);
    default:
        return std::nullopt;
    }
}

void setCount(Settings& settings, Field field, std::optional<std::int64_t> count)
{
    switch (field) {
    case Field::pulseFrequency:
        return set(settings.pulseFrequency, count);
    case Field::phaseDuration:
        return set(settings.phaseDuration, count);
    case Field::interphaseGap:
        return set(settings.interphaseGap, count);
    case Field::secondPhaseDuration:
        return set(settings.secondPhaseDuration, count);
    case Field::carrierFrequency:
        return set(settings.carrierFrequency, count);
    case Field::burstDuty:
        return set(settings.burstDuty, count);
    case Field::onTime:
        return set(settings.onTime, count);
    case Field::offTime:
        return set(settings.offTime, count);
    case Field::rampUp:
        return set(settings.rampUp, count);
    case Field::rampDown:
        return set(settings.rampDown, count);
    case Field::sessionLength:
        return set(settings.sessionLength, count);
    case Field::lastToleratedAmplitude:
        return set(settings.amplitude.lastTolerated, count);
    case Field::amplitudeCeiling:
        return set(settings.amplitude.ceiling, count);
    default:
        return;
    }
}

Amount amountIn(Field field, std::int64_t count)
{
    switch (field) {
    case Field::pulseFrequency:
        return amountOf(PulseFrequency::fromCount(count));
    case Field::phaseDuration:
    case Field::interphaseGap:
    case Field::secondPhaseDuration:
        return amountOf(PhaseDuration::fromCount(count));
    case Field::carrierFrequency:
        return amountOf(CarrierFrequency::fromCount(count));
    case Field::burstDuty:
        return amountOf(BurstDuty::fromCount(count));
    case Field::onTime:
    case Field::offTime:
    case Field::rampUp:
    case Field::rampDown:
        return amountOf(Milliseconds(count));
    case Field::sessionLength:
        return {static_cast<double>(count) / 6e4, Unit::minute};
    case Field::lastToleratedAmplitude:
    case Field::amplitudeCeiling:
        return amountOf(Amplitude::fromCount(count));
    default:
        return quadrille::countOf(count);
    }
}

std::optional<Amplitude> doseAmplitude(const AmplitudeGuidance& guidance)
{
    if (!guidance.ceiling || !guidance.lastTolerated) {
        return guidance.ceiling ? guidance.ceiling : guidance.lastTolerated;
    }
    return std::max(*guidance.ceiling, *guidance.lastTolerated);
}

CountRange arithmeticBounds(Field field)
{
    switch (field) {
    case Field::pulseFrequency:
        return {100, 10'000'000, 1, 100};
    case Field::phaseDuration:
        return {1, 1'000'000, 1, 1};
    case Field::interphaseGap:
        return {0, 1'000'000, 1, 0};
    case Field::secondPhaseDuration:
        return {1, 10'000'000, 1, 1};
    case Field::carrierFrequency:
        return {100'000, 100'000'000, 1, 100'000};
    case Field::burstDuty:
        return {1, 1000, 1, 1};
    case Field::onTime:
        return {1, hourInMs, 1, 1};
    case Field::offTime:
    case Field::rampUp:
    case Field::rampDown:
        return {0, hourInMs, 1, 0};
    case Field::sessionLength:
        return {1, 24 * hourInMs, 1, 1};
    case Field::lastToleratedAmplitude:
    case Field::amplitudeCeiling:
        return {0, 1'000'000, 1, 0};
    default:
        return {};
    }
}

std::vector<Finding> settingsFindings(const Settings& settings, RampHabit habit, CycleStart start)
{
    std::vector<Finding> findings = boundsFindings(settings);
    if (!isChargeBalanced(settings.waveform)) {
        Finding finding = stop(FindingCode::directCurrentUnsuitable, Field::waveform,
                               Advice::chooseAnotherStimulator);
        finding.source = {"common practice, no source", false};
        findings.push_back(finding);
    }
    if (hasStop(findings)) {
        return findings; // the rest would compute with values that mean nothing
    }
    if (const auto overlap = overlapFinding(settings)) {
        findings.push_back(*overlap);
    }
    if (const auto secondPhase = secondPhaseFinding(settings)) {
        findings.push_back(*secondPhase);
    }
    std::ranges::copy(timeFindings(settings, habit, start), std::back_inserter(findings));
    const AmplitudeGuidance& guidance = settings.amplitude;
    if (guidance.ceiling && guidance.lastTolerated && *guidance.ceiling < *guidance.lastTolerated) {
        Finding finding =
            stop(FindingCode::ceilingBelowTolerated, Field::amplitudeCeiling, Advice::setToLimit,
                 amountOf(*guidance.ceiling), amountOf(*guidance.lastTolerated));
        finding.severity = Severity::attention;
        findings.push_back(finding);
    }
    sortBySeverity(findings);
    return findings;
}

std::vector<Finding> stimulatorFindings(const Settings& settings, const Stimulator& stimulator)
{
    std::vector<Finding> findings;
    if (std::ranges::find(stimulator.waveforms, settings.waveform) == stimulator.waveforms.end()) {
        findings.push_back(stop(FindingCode::waveformNotOffered, Field::waveform,
                                Advice::chooseAnotherStimulator));
    }
    for (const Field field : standardAskingOrder()) {
        const auto count = countIn(settings, field);
        const auto range = rangeOf(stimulator, field);
        if (!count || !range || !appliesTo(field, settings.waveform)) {
            continue;
        }
        if (const auto finding = rangeFinding(field, *count, *range)) {
            findings.push_back(*finding);
        }
    }
    return findings;
}

} // namespace quadrille
