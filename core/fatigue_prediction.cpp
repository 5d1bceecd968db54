// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fatigue_prediction.h"

#include "core/contraction_run_body.h"
#include "core/model_session.h"

#include <algorithm>
#include <cmath>

namespace quadrille
{

namespace
{

/// The published share A/A(600 µs), Ding et al., Muscle Nerve 2007;36:214; 1 where phase duration
/// is not asked for.
double recruitedShare(const Settings& settings, const FatigueOptions& options)
{
    if (!options.phaseDurationRecruits) {
        return 1.0;
    }
    const FatigueParameters& p = *options.parameters;
    const auto recruited = [&p](double microseconds) {
        return 1.0 - std::exp(-(microseconds - p.leastPhaseDuration) / p.phaseDurationScale);
    };
    const double share = recruited(settings.phaseDuration.shown()) / recruited(p.fullPhaseDuration);
    return std::max(share, 0.0);
}

/// Why the model cannot run these settings; nothing when it can.
std::optional<Error> refusal(const Settings& settings, const SessionTiming& timing)
{
    if (settings.waveform == Waveform::kilohertzBursts || !isChargeBalanced(settings.waveform)) {
        return Error{ErrorCode::impossible, {}, {}, Field::waveform, {}};
    }
    if (settings.pulseFrequency < leastModelFrequency ||
        settings.pulseFrequency > mostModelFrequency) {
        return Error{ErrorCode::outOfRange,
                     {},
                     {},
                     Field::pulseFrequency,
                     {amountOf(settings.pulseFrequency), amountOf(leastModelFrequency),
                      amountOf(mostModelFrequency)}};
    }
    if (timing.pulsesPerContraction > mostModelPulses) {
        const double longest =
            static_cast<double>(mostModelPulses) / settings.pulseFrequency.shown();
        return Error{ErrorCode::outOfRange,
                     {},
                     {},
                     Field::onTime,
                     {amountOf(timing.onPhase), {0.0, Unit::second}, {longest, Unit::second}}};
    }
    // Each contraction begins with a pulse: contractions that follow each other faster than the
    // highest frequency are no contractions of the model.
    const double shortestCycle = 1e3 / mostModelFrequency.shown();
    if (static_cast<double>(timing.cycle.count()) < shortestCycle) {
        const double onPhase = static_cast<double>(timing.onPhase.count());
        return Error{ErrorCode::outOfRange,
                     {},
                     {},
                     Field::offTime,
                     {amountOf(timing.offTime),
                      {std::max(shortestCycle - onPhase, 0.0) / 1e3, Unit::second},
                      {24.0 * 3600.0, Unit::second}}};
    }
    return std::nullopt;
}

Result<ModelSession> modelSession(const Settings& settings, RampHabit habit,
                                  const FatigueOptions& options)
{
    const Result<SessionTiming> timing = sessionTiming(settings, habit);
    if (!timing) {
        return timing.error();
    }
    if (const auto refused = refusal(settings, *timing)) {
        return *refused;
    }
    return ModelSession(*timing, settings.pulseFrequency, recruitedShare(settings, options),
                        *options.parameters);
}

ContractionForce shown(const ContractionForces<double>& forces)
{
    return {forces.peak, forces.impulse / 1e3};
}

std::optional<FatigueRatio> ratio(const ContractionForces<double>& later,
                                  const ContractionForces<double>& first)
{
    if (!(first.peak > 0.0) || !(first.impulse > 0.0)) {
        return std::nullopt;
    }
    return FatigueRatio{later.impulse / first.impulse, later.peak / first.peak};
}

ContractionForces<double> sum(const std::array<ContractionForces<double>, 3>& forces)
{
    return {forces[0].peak + forces[1].peak + forces[2].peak,
            forces[0].impulse + forces[1].impulse + forces[2].impulse};
}

} // namespace

Result<FatiguePrediction> predictFatigue(const Settings& settings, RampHabit habit,
                                         const FatigueOptions& options)
{
    const Result<ModelSession> session = modelSession(settings, habit, options);
    if (!session) {
        return session.error();
    }
    const SessionForces forces = session->forces();
    const FatigueParameters& p = *options.parameters;
    FatiguePrediction prediction;
    prediction.recruitedShare = recruitedShare(settings, options);
    const double unrecovered = forces.unrecoveredImpulseAtEnd;
    prediction.atEnd = {p.forceScaleAtRest + p.forceScalePerImpulse * unrecovered,
                        p.halfActivationAtRest + p.halfActivationPerImpulse * unrecovered,
                        p.relaxationTimeAtRest + p.relaxationPerImpulse * unrecovered};
    if (forces.contractions == 0) {
        return prediction;
    }
    const auto kept = static_cast<std::size_t>(std::min<std::int64_t>(3, forces.contractions));
    const ContractionForces<double>& last = forces.lastThree[kept - 1];
    prediction.first = shown(forces.firstThree[0]);
    prediction.last = shown(last);
    prediction.lastToFirst = ratio(last, forces.firstThree[0]);
    if (kept == 3) {
        prediction.lastThreeToFirstThree = ratio(sum(forces.lastThree), sum(forces.firstThree));
    }
    return prediction;
}

Result<std::vector<ContractionForce>> predictContractions(const Settings& settings, RampHabit habit,
                                                          const FatigueOptions& options)
{
    const Result<ModelSession> session = modelSession(settings, habit, options);
    if (!session) {
        return session.error();
    }
    std::vector<ContractionForce> all;
    std::ranges::transform(session->eachContraction(), std::back_inserter(all), shown);
    return all;
}

Result<std::vector<ForceSample>> forceOverTime(const Settings& settings, RampHabit habit,
                                               Milliseconds from, Milliseconds length,
                                               Milliseconds interval, const FatigueOptions& options)
{
    const Result<ModelSession> session = modelSession(settings, habit, options);
    if (!session) {
        return session.error();
    }
    if (from < Milliseconds(0) || from >= settings.sessionLength || length < Milliseconds(0) ||
        interval <= Milliseconds(0)) {
        return Error{ErrorCode::outOfRange,
                     {},
                     {},
                     Field::sessionLength,
                     {amountOf(from), amountOf(Milliseconds(0)), amountOf(settings.sessionLength)}};
    }
    const Milliseconds until = std::min(length, settings.sessionLength - from) + from;
    ContractionRun<double> rested(session->train(), *options.parameters);
    Muscle<double> muscle;
    const double firstPeak = rested.run(muscle, 0.0).peak;
    std::vector<ForceSample> samples;
    session->sampleForce(from, until, interval, [&](Milliseconds time, double newtons) {
        samples.push_back({time, firstPeak > 0.0 ? newtons / firstPeak : 0.0});
    });
    return samples;
}

Result<std::optional<FatigueRatio>> recoveryAfter(const Settings& settings, RampHabit habit,
                                                  Milliseconds rest, const FatigueOptions& options)
{
    const Result<ModelSession> session = modelSession(settings, habit, options);
    if (!session) {
        return session.error();
    }
    const double decay =
        std::exp(-static_cast<double>(rest.count()) / options.parameters->recoveryTime);
    ContractionRun<double> run(session->train(), *options.parameters);
    Muscle<double> rested;
    const ContractionForces<double> first = run.run(rested, 0.0);
    Muscle<double> tired;
    tired.unrecoveredImpulse = session->forces().unrecoveredImpulseAtEnd * decay;
    const ContractionForces<double> later = run.run(tired, 0.0);
    return ratio(later, first);
}

std::vector<ModelLimit> modelLimits(const Settings& settings, const FatigueOptions& options)
{
    constexpr Milliseconds measuredSession{std::chrono::minutes(10)};
    using namespace literals;
    std::vector<ModelLimit> limits{ModelLimit::groupValuesNotThisPatient,
                                   ModelLimit::comparesSettingsOnly, ModelLimit::isometricOnly,
                                   ModelLimit::amplitudeNotInModel, ModelLimit::noLastingFatigue};
    if (settings.sessionLength > measuredSession) {
        limits.push_back(ModelLimit::minutesExtrapolated);
    }
    if (settings.pulseFrequency < 10_Hz || settings.pulseFrequency > 100_Hz) {
        limits.push_back(ModelLimit::frequencyExtrapolated);
    }
    if (options.phaseDurationRecruits) {
        limits.push_back(ModelLimit::phaseDurationUncertain);
    }
    return limits;
}

} // namespace quadrille
