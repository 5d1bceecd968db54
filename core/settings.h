// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/field.h"
#include "core/finding.h"
#include "core/stimulator.h"
#include "core/units.h"
#include "core/waveform.h"

#include <optional>
#include <vector>

namespace quadrille
{

/// How strong, as the practitioner leaves it to the patient. Both may be unknown.
struct AmplitudeGuidance {
    std::optional<Amplitude> lastTolerated = std::nullopt; ///< measured at the last visit
    std::optional<Amplitude> ceiling = std::nullopt;       ///< never above this at home
    friend bool operator==(const AmplitudeGuidance&, const AmplitudeGuidance&) = default;
};

/// The settings of one site. Plain values: what they mean in time says session_timing.h, in current
/// dose.h.
struct Settings {
    Waveform waveform = Waveform::symmetricBiphasic;
    PulseFrequency pulseFrequency; ///< burst rate for kHz bursts
    PhaseDuration phaseDuration;   ///< the first phase; not used for kHz bursts
    PhaseDuration interphaseGap;   ///< no current flows in it
    std::optional<PhaseDuration> secondPhaseDuration = std::nullopt; ///< asymmetric only
    std::optional<CarrierFrequency> carrierFrequency = std::nullopt; ///< kHz bursts only
    std::optional<BurstDuty> burstDuty = std::nullopt;               ///< kHz bursts only
    Milliseconds onTime{};
    Milliseconds offTime{};
    Milliseconds rampUp{};
    Milliseconds rampDown{};
    Milliseconds sessionLength{};
    AmplitudeGuidance amplitude;
    friend bool operator==(const Settings&, const Settings&) = default;
};

/// What a new block starts with on this unit: its presets, amplitude not known.
Settings presetSettings(const Stimulator& stimulator);

/// True when a setting has a meaning for this waveform.
bool appliesTo(Field field, Waveform waveform);

/// One setting in base units; nothing when it is not filled or not a setting.
std::optional<std::int64_t> countIn(const Settings& settings, Field field);
/// Sets one setting in base units. Nothing empties an optional setting and leaves the others as
/// they are.
void setCount(Settings& settings, Field field, std::optional<std::int64_t> count);
/// The unit in which people read a setting.
Amount amountIn(Field field, std::int64_t count);

/// The amplitude for which the dose is shown: the higher of ceiling and last tolerated, because the
/// patient may go that far; nothing when neither is known.
std::optional<Amplitude> doseAmplitude(const AmplitudeGuidance& guidance);

/// The widest values for which the arithmetic is exact; far beyond any stimulator. In base units.
CountRange arithmeticBounds(Field field);

/// What the settings say against themselves, whatever the unit: values outside the arithmetic,
/// pulses that overlap (pulse frequency × (first phase + gap + second phase) > 1), a second phase
/// shorter than the first, ramps longer than the on time they lie in, no off time, a session
/// shorter than one on phase (and the off time before it, if the unit begins with that), a ceiling
/// below what was tolerated.
std::vector<Finding> settingsFindings(const Settings& settings, RampHabit habit,
                                      CycleStart start = CycleStart::withOn);

/// What the settings say against a unit: outside its range, off its steps, a waveform it does not
/// give.
std::vector<Finding> stimulatorFindings(const Settings& settings, const Stimulator& stimulator);

} // namespace quadrille
