// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session_timing.h"

#include <algorithm>

namespace quadrille
{

namespace
{

Error errorFrom(const Finding& finding)
{
    const bool outside = finding.code == FindingCode::outsideArithmetic;
    Error error{outside ? ErrorCode::outOfRange : ErrorCode::impossible, {}, {}, finding.field, {}};
    if (finding.code == FindingCode::notFilled) {
        error.code = ErrorCode::notFilled;
    }
    if (finding.figure) {
        error.figures.push_back(*finding.figure);
    }
    if (finding.limit) {
        error.figures.push_back(*finding.limit);
    }
    return error;
}

} // namespace

double SessionTiming::dutyCycle() const
{
    return static_cast<double>(onPhase.count()) / static_cast<double>(cycle.count());
}

double SessionTiming::offOnRatio() const
{
    return static_cast<double>(offTime.count()) / static_cast<double>(onPhase.count());
}

Result<SessionTiming> sessionTiming(const Settings& settings, RampHabit habit, CycleStart start)
{
    const std::vector<Finding> findings = settingsFindings(settings, habit, start);
    const auto stop = std::ranges::find(findings, Severity::stop, &Finding::severity);
    if (stop != findings.end()) {
        return errorFrom(*stop);
    }
    SessionTiming timing;
    const Milliseconds ramps = settings.rampUp + settings.rampDown;
    const bool included = habit == RampHabit::includedInOnTime;
    timing.rampUp = settings.rampUp;
    timing.rampDown = settings.rampDown;
    timing.onPhase = included ? settings.onTime : settings.onTime + ramps;
    timing.plateau = included ? settings.onTime - ramps : settings.onTime;
    timing.offTime = settings.offTime;
    timing.cycle = timing.onPhase + timing.offTime;
    timing.session = settings.sessionLength;
    timing.lead = start == CycleStart::withOff ? settings.offTime : Milliseconds(0);

    const Milliseconds cycled = timing.session - timing.lead;
    timing.cyclesComplete = cycled / timing.cycle;
    timing.remainder = cycled % timing.cycle;
    timing.contractionsStarted = timing.cyclesComplete;
    timing.contractionsCompleted = timing.cyclesComplete;
    if (timing.remainder > Milliseconds(0)) {
        ++timing.contractionsStarted;
        if (timing.remainder >= timing.onPhase) {
            ++timing.contractionsCompleted;
        } else {
            timing.cutContraction = timing.remainder;
        }
    }
    timing.totalOnTime = timing.contractionsCompleted * timing.onPhase + timing.cutContraction;
    timing.pulsesPerContraction = pulsesIn(timing.onPhase, settings.pulseFrequency);
    timing.pulses = timing.contractionsCompleted * timing.pulsesPerContraction +
                    pulsesIn(timing.cutContraction, settings.pulseFrequency);
    return timing;
}

Milliseconds sessionLengthFor(std::int64_t contractions, const SessionTiming& timing)
{
    return timing.lead + contractions * timing.cycle - timing.offTime;
}

std::int64_t pulsesIn(Milliseconds onPhase, PulseFrequency frequency)
{
    constexpr std::int64_t millisecondsTimesMillihertz = 1'000'000; // in one pulse
    const std::int64_t product = onPhase.count() * frequency.count();
    return (product + millisecondsTimesMillihertz - 1) / millisecondsTimesMillihertz;
}

Settings withoutLead(Settings settings, const SessionTiming& timing)
{
    settings.sessionLength -= timing.lead;
    return settings;
}

} // namespace quadrille
