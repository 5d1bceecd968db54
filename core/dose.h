// SPDX-License-Identifier: GPL-3.0-or-later
// What a setting does electrically, for the plateau (full amplitude) of the on phase. Figures over
// the cycle count ramps at full amplitude, which errs to the safe side.
#pragma once

#include "core/placement.h"
#include "core/session_timing.h"
#include "core/settings.h"

#include <optional>

namespace quadrille
{

/// The load at which power and energy are stated (IEC 60601-2-10; FDA guidance on powered muscle
/// stimulators, 1999).
inline constexpr double referenceLoadOhm = 500.0;

/// The dose of one site at one amplitude.
struct Dose {
    Amplitude amplitude;         ///< what the figures are for
    ChargePerPhase phaseCharge;  ///< amplitude × phase duration; kHz: one half sine of the carrier
    ChargeDensity chargeDensity; ///< phase charge / smaller pad
    RmsCurrent rmsTrain;         ///< within the train
    RmsCurrent rmsCycle;         ///< over on and off: train × sqrt(duty cycle)
    CurrentDensity currentDensity; ///< r.m.s. within the train / smaller pad
    Power powerTrain;              ///< into 500 ohm
    PowerDensity powerDensityTrain;
    PowerDensity powerDensityCycle;
    std::optional<PulseEnergy> pulseEnergy =
        std::nullopt; ///< one pulse into 500 ohm; not defined for kHz bursts
};

/// r.m.s. current within a train.
///   symmetric   I · sqrt(2 · t · f)
///   asymmetric  sqrt(f · (I1² t1 + I2² t2)), I2 = I1 t1 / t2
///   kHz bursts  I / sqrt 2 · sqrt(burst duty)
/// Follows from the definition of the mean square over one period of a rectangular train (a
/// half-sine for bursts).
RmsCurrent rmsWithinTrain(const Settings& settings, Amplitude amplitude);

/// All dose figures. `smallerPad` > 0; `timing` belongs to the same settings.
Dose doseOf(const Settings& settings, Amplitude amplitude, PadArea smallerPad,
            const SessionTiming& timing);

/// Charge of one polarity over many pulses: `pulses` × phase charge. The other polarity cancels it.
TotalCharge totalCharge(std::int64_t pulses, ChargePerPhase phaseCharge);

} // namespace quadrille
