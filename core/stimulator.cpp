// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stimulator.h"

#include "core/settings.h"

#include <algorithm>

namespace quadrille
{

namespace
{

template <class Q>
CountRange counts(const Range<Q>& range)
{
    return {baseCount(range.least), baseCount(range.most), baseCount(range.step),
            baseCount(range.preset)};
}

template <class Q>
std::optional<CountRange> counts(const std::optional<Range<Q>>& range)
{
    return range ? std::optional(counts(*range)) : std::nullopt;
}

template <class Tag>
void assign(Range<Quantity<Tag>>& range, const CountRange& counts)
{
    using Q = Quantity<Tag>;
    range = {Q::fromCount(counts.least), Q::fromCount(counts.most), Q::fromCount(counts.step),
             Q::fromCount(counts.preset)};
}

void assign(Range<Milliseconds>& range, const CountRange& counts)
{
    range = {Milliseconds(counts.least), Milliseconds(counts.most), Milliseconds(counts.step),
             Milliseconds(counts.preset)};
}

template <class Q>
void assign(std::optional<Range<Q>>& range, const std::optional<CountRange>& counts)
{
    if (!counts) {
        range.reset();
        return;
    }
    assign(range.emplace(), *counts);
}

Finding stopAt(FindingCode code, Field field, Advice advice)
{
    return {.code = code, .severity = Severity::stop, .field = field, .advice = advice};
}

/// A range must be in order and inside what the arithmetic allows.
void checkRange(std::vector<Finding>& findings, Field field, const CountRange& range)
{
    const CountRange bounds = arithmeticBounds(field);
    const bool inOrder =
        range.least <= range.preset && range.preset <= range.most && range.step > 0;
    const bool inBounds = bounds.contains(range.least) && bounds.contains(range.most);
    if (inOrder && inBounds) {
        return;
    }
    Finding finding = stopAt(FindingCode::outsideArithmetic, field, Advice::fillIn);
    finding.figure = amountIn(field, inBounds ? range.preset : range.most);
    finding.limit = amountIn(field, inBounds ? range.most : bounds.most);
    findings.push_back(finding);
}

void checkTraits(std::vector<Finding>& findings, const Stimulator& stimulator)
{
    const auto outside = [&](Field field, Amount figure, Amount limit) {
        Finding finding = stopAt(FindingCode::outsideArithmetic, field, Advice::fillIn);
        finding.figure = figure;
        finding.limit = limit;
        findings.push_back(finding);
    };
    if (stimulator.channels < 1 || stimulator.channels > 8) {
        outside(Field::channels, countOf(stimulator.channels), countOf(8));
    }
    if (stimulator.memories < 0 || stimulator.memories > mostMemories) {
        outside(Field::memories, countOf(stimulator.memories), countOf(mostMemories));
    }
    const auto most = Amplitude::fromCount(arithmeticBounds(Field::amplitudeCeiling).most);
    if (stimulator.mostOutput &&
        (*stimulator.mostOutput <= Amplitude() || *stimulator.mostOutput > most)) {
        outside(Field::mostOutput, amountOf(*stimulator.mostOutput), amountOf(most));
    }
    for (const auto& [field, word] : stimulator.ownWords) {
        if (word.empty() || word.size() > longestOwnWord) {
            outside(Field::ownWord, countOf(static_cast<std::int64_t>(word.size())),
                    countOf(static_cast<std::int64_t>(longestOwnWord)));
        }
    }
}

/// A gap of zero can be had on any unit; every other setting of a waveform must be known.
bool needsRange(Field field, const std::vector<Waveform>& waveforms)
{
    return field != Field::interphaseGap &&
           std::ranges::any_of(waveforms, [field](Waveform w) { return appliesTo(field, w); });
}

} // namespace

std::int64_t CountRange::nearestStep(std::int64_t count) const
{
    const std::int64_t inside = std::clamp(count, least, most);
    if (step <= 0 || inside == most) {
        return inside;
    }
    const std::uint64_t stepLength = static_cast<std::uint64_t>(step);
    const std::uint64_t pastBelow = distance(least, inside) % stepLength;
    const std::uint64_t toAbove = std::min(stepLength - pastBelow, distance(inside, most));
    return pastBelow <= toAbove ? inside - static_cast<std::int64_t>(pastBelow)
                                : inside + static_cast<std::int64_t>(toAbove);
}

const std::vector<Field>& standardAskingOrder()
{
    static const std::vector<Field> order{Field::pulseFrequency,   Field::phaseDuration,
                                          Field::interphaseGap,    Field::secondPhaseDuration,
                                          Field::carrierFrequency, Field::burstDuty,
                                          Field::onTime,           Field::offTime,
                                          Field::rampUp,           Field::rampDown,
                                          Field::sessionLength,    Field::lastToleratedAmplitude,
                                          Field::amplitudeCeiling};
    return order;
}

const std::vector<Field>& sharedTimingFields()
{
    static const std::vector<Field> fields{Field::pulseFrequency, Field::onTime,
                                           Field::offTime,        Field::rampUp,
                                           Field::rampDown,       Field::sessionLength};
    return fields;
}

std::vector<Field> askingOrderOf(const Stimulator& stimulator)
{
    std::vector<Field> order;
    const auto append = [&](Field field) {
        if (rangeOf(stimulator, field) && std::ranges::find(order, field) == order.end()) {
            order.push_back(field);
        }
    };
    std::ranges::for_each(stimulator.askingOrder, append);
    std::ranges::for_each(standardAskingOrder(), append);
    return order;
}

std::optional<CountRange> rangeOf(const Stimulator& stimulator, Field field)
{
    switch (field) {
    case Field::pulseFrequency:
        return counts(stimulator.pulseFrequency);
    case Field::phaseDuration:
        return counts(stimulator.phaseDuration);
    case Field::interphaseGap:
        return counts(stimulator.interphaseGap);
    case Field::secondPhaseDuration:
        return counts(stimulator.secondPhaseDuration);
    case Field::carrierFrequency:
        return counts(stimulator.carrierFrequency);
    case Field::burstDuty:
        return counts(stimulator.burstDuty);
    case Field::lastToleratedAmplitude:
    case Field::amplitudeCeiling:
        return counts(stimulator.amplitude);
    case Field::onTime:
        return counts(stimulator.onTime);
    case Field::offTime:
        return counts(stimulator.offTime);
    case Field::rampUp:
        return counts(stimulator.rampUp);
    case Field::rampDown:
        return counts(stimulator.rampDown);
    case Field::sessionLength:
        return counts(stimulator.sessionLength);
    default:
        return std::nullopt;
    }
}

void setRange(Stimulator& stimulator, Field field, const std::optional<CountRange>& range)
{
    const auto set = [&](auto& target) {
        if (range) {
            assign(target, *range);
        }
    };
    switch (field) {
    case Field::pulseFrequency:
        return set(stimulator.pulseFrequency);
    case Field::phaseDuration:
        return set(stimulator.phaseDuration);
    case Field::interphaseGap:
        return assign(stimulator.interphaseGap, range);
    case Field::secondPhaseDuration:
        return assign(stimulator.secondPhaseDuration, range);
    case Field::carrierFrequency:
        return assign(stimulator.carrierFrequency, range);
    case Field::burstDuty:
        return assign(stimulator.burstDuty, range);
    case Field::lastToleratedAmplitude:
    case Field::amplitudeCeiling:
        return set(stimulator.amplitude);
    case Field::onTime:
        return set(stimulator.onTime);
    case Field::offTime:
        return set(stimulator.offTime);
    case Field::rampUp:
        return set(stimulator.rampUp);
    case Field::rampDown:
        return set(stimulator.rampDown);
    case Field::sessionLength:
        return set(stimulator.sessionLength);
    default:
        return;
    }
}

Stimulator commonStimulator()
{
    using namespace literals;
    using namespace std::chrono_literals;
    Stimulator unit;
    unit.waveforms = {Waveform::symmetricBiphasic};
    unit.channels = 2;
    unit.pulseFrequency = {1_Hz, 120_Hz, 1_Hz, 50_Hz};
    unit.phaseDuration = {50_us, 400_us, 10_us, 100_us};
    unit.amplitude = {0_mA, 100_mA, 1_mA, 0_mA};
    unit.onTime = {1s, 30s, 1s, 4s};
    unit.offTime = {1s, 60s, 1s, 12s};
    unit.rampUp = {0s, 5s, 500ms, 1s};
    unit.rampDown = {0s, 5s, 500ms, 1s};
    unit.sessionLength = {1min, 59min, 1min, 20min};
    return unit;
}

std::vector<Finding> checkStimulator(const Stimulator& stimulator)
{
    std::vector<Finding> findings;
    if (stimulator.name.empty()) {
        findings.push_back(stopAt(FindingCode::notFilled, Field::name, Advice::fillIn));
    }
    if (stimulator.waveforms.empty()) {
        findings.push_back(stopAt(FindingCode::notFilled, Field::outputType, Advice::fillIn));
    }
    checkTraits(findings, stimulator);
    for (const Field field : standardAskingOrder()) {
        if (field == Field::amplitudeCeiling) {
            continue; // one range for both amplitude fields
        }
        if (const auto range = rangeOf(stimulator, field)) {
            checkRange(findings, field, *range);
        } else if (needsRange(field, stimulator.waveforms)) {
            findings.push_back(stopAt(FindingCode::notFilled, field, Advice::fillIn));
        }
    }
    return findings;
}

} // namespace quadrille
