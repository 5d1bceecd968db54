// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace quadrille
{

/// The form of the current. A pulse of a biphasic current is both phases; phase duration is always
/// one phase (papers mix these up).
enum class Waveform {
    symmetricBiphasic,          ///< two equal rectangular phases
    asymmetricBalancedBiphasic, ///< the second phase longer and lower, of equal charge
    kilohertzBursts,  ///< bursts of sinusoidal alternating current; pulse frequency is the burst
                      ///< rate
    unbalancedPulses, ///< a charge is left over after each pulse
    directCurrent,    ///< no pulses at all
};

/// Only currents whose charge balances may be used for muscle exercise at home: a charge left over
/// each pulse burns skin (common practice; the stimulator's record says which it gives).
constexpr bool isChargeBalanced(Waveform waveform)
{
    return waveform == Waveform::symmetricBiphasic ||
           waveform == Waveform::asymmetricBalancedBiphasic ||
           waveform == Waveform::kilohertzBursts;
}

} // namespace quadrille
