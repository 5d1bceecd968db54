// SPDX-License-Identifier: GPL-3.0-or-later
// What the force–fatigue model says of a session. It serves to compare settings with one another
// and for nothing else: group values of one muscle at rest, never one patient.
#pragma once

#include "core/fatigue_parameters.h"
#include "core/result.h"
#include "core/session_timing.h"
#include "core/settings.h"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace quadrille
{

/// Pulse frequencies for which the model is integrated; it was measured from about 10 to 100 Hz.
inline constexpr PulseFrequency leastModelFrequency = PulseFrequency::fromCount(1'000);
inline constexpr PulseFrequency mostModelFrequency = PulseFrequency::fromCount(150'000);

/// Pulses of one contraction up to which the model is integrated: ten minutes at 50 Hz.
inline constexpr std::int64_t mostModelPulses = 30'000;

/// How the model is run.
struct FatigueOptions {
    const FatigueParameters* parameters = &ableBodiedKneeExtensors(); ///< one of the sets
    /// Lets phase duration change how much of the muscle is recruited. Off by default: its
    /// threshold is too high for able-bodied adults (Kesar, Binder-Macleod, Exp Physiol
    /// 2006;91:967). Amplitude never enters.
    bool phaseDurationRecruits = false;
    friend bool operator==(const FatigueOptions&, const FatigueOptions&) = default;
};

/// One whole contraction: from its first pulse to the next contraction. In newtons for checks of
/// the engine; never shown to a person.
struct ContractionForce {
    double peakNewtons = 0.0;           ///< highest force, between pulses too
    double integralNewtonSeconds = 0.0; ///< force–time integral
};

/// Later contractions against first ones; a ratio above 1 can occur while relaxation slows before
/// strength is lost. The force–time integral is the safer of the two.
struct FatigueRatio {
    double forceTimeIntegral = 0.0;
    double peak = 0.0;
};

/// The fatigue states at the session's end, in the units of the equations.
struct FatigueState {
    double forceScale = 0.0;     ///< A, N/ms
    double halfActivation = 0.0; ///< Km
    double relaxationTime = 0.0; ///< tau 1, ms
};

struct FatiguePrediction {
    double recruitedShare = 1.0; ///< by phase duration; 1 where that is not asked for
    std::optional<ContractionForce> first = std::nullopt; ///< nothing without a whole contraction
    std::optional<ContractionForce> last = std::nullopt;  ///< the last whole contraction
    /// Last whole contraction / first; nothing where there is none or no force.
    std::optional<FatigueRatio> lastToFirst = std::nullopt;
    /// Mean of the last three / mean of the first three; nothing below three contractions.
    std::optional<FatigueRatio> lastThreeToFirstThree = std::nullopt;
    FatigueState atEnd;
};

/// Runs the model over a session. Errors: those of sessionTiming(); `impossible` with
/// Field::waveform for currents that the model does not know (kHz bursts, currents that do not
/// balance); `outOfRange` with Field::pulseFrequency outside leastModelFrequency …
/// mostModelFrequency, with Field::onTime beyond mostModelPulses in a contraction, with
/// Field::offTime where whole contractions would follow each other faster than mostModelFrequency.
/// Relative error of each ratio below 1e-7.
Result<FatiguePrediction> predictFatigue(const Settings& settings, RampHabit habit,
                                         const FatigueOptions& options = {});

/// Every whole contraction of a session in turn; the same errors.
Result<std::vector<ContractionForce>> predictContractions(const Settings& settings, RampHabit habit,
                                                          const FatigueOptions& options = {});

/// The force over a part of a session.
struct ForceSample {
    Milliseconds time{};           ///< since the session began
    double shareOfFirstPeak = 0.0; ///< force / peak of the first contraction
};
/// Samples every `interval` from `from` (inside the session) for `length`, at most to the session's
/// end; `interval` > 0. The same errors, and `outOfRange` with Field::sessionLength where the part
/// lies outside the session.
Result<std::vector<ForceSample>> forceOverTime(const Settings& settings, RampHabit habit,
                                               Milliseconds from, Milliseconds length,
                                               Milliseconds interval,
                                               const FatigueOptions& options = {});

/// A contraction after the session and a rest, against the session's first one; nothing where that
/// had no force. `rest` ≥ 0.
Result<std::optional<FatigueRatio>> recoveryAfter(const Settings& settings, RampHabit habit,
                                                  Milliseconds rest,
                                                  const FatigueOptions& options = {});

/// What must be said wherever a figure of the model is shown. app/words words each.
enum class ModelLimit {
    groupValuesNotThisPatient,
    comparesSettingsOnly,
    isometricOnly,
    amplitudeNotInModel,
    minutesExtrapolated,    ///< sessions longer than the measured minutes
    frequencyExtrapolated,  ///< outside 10 … 100 Hz
    noLastingFatigue,       ///< recovery has one time constant; no effect over days or weeks
    phaseDurationUncertain, ///< where phase duration recruits
};
/// Those that apply to these settings, the gravest first.
std::vector<ModelLimit> modelLimits(const Settings& settings, const FatigueOptions& options = {});

} // namespace quadrille
