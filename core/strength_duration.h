// SPDX-License-Identifier: GPL-3.0-or-later
// Strength-duration curves: rheobase and chronaxie from thresholds that were measured at several
// phase durations. They hang on the pads, their distance and the waveform, so they are for
// comparing sides and dates in one patient, not for comparing patients.
#pragma once

#include "core/finding.h"
#include "core/limits.h"
#include "core/result.h"
#include "core/stimulator.h"
#include "core/units.h"

#include <span>
#include <vector>

namespace quadrille
{

/// One measured threshold: the least amplitude that gave the response at this phase duration.
struct ThresholdPoint {
    PhaseDuration phaseDuration;
    Amplitude threshold;
    friend bool operator==(const ThresholdPoint&, const ThresholdPoint&) = default;
};

/// Which law is laid through the thresholds, and which difference its least squares keep small.
/// I is the threshold, d the phase duration, Irh the rheobase, tch the chronaxie.
enum class StrengthDurationLaw {
    weiss,         ///< I = Irh (1 + tch / d); squares of the current
    weissOnCharge, ///< the same law as a charge, I d = Irh (d + tch); squares of the charge
    lapicque,      ///< I = Irh / (1 - exp(-d / tau)), tch = tau ln 2; squares of the current
};

struct FittedCurrentTag : FigureTag<Unit::milliampere> {
};
/// A current that follows from a fit, mA.
using FittedCurrent = Figure<FittedCurrentTag>;
struct FittedDurationTag : FigureTag<Unit::microsecond> {
};
/// A phase duration that follows from a fit, µs.
using FittedDuration = Figure<FittedDurationTag>;

/// A law with its two constants, and how well it meets the thresholds.
struct StrengthDurationFit {
    StrengthDurationLaw law = StrengthDurationLaw::weiss;
    FittedCurrent rheobase;               ///< threshold of a phase without end; above 0
    FittedDuration chronaxie;             ///< where the threshold is twice the rheobase; above 0
    std::vector<FittedCurrent> residuals; ///< measured - fitted, in the order of the points
    /// Root of the mean squared residual, always of the current; the mean is over all points.
    FittedCurrent rmse;

    /// Time constant of Lapicque's law, chronaxie / ln 2.
    FittedDuration timeConstant() const;
    /// Threshold by this law; needs a phase duration above 0.
    FittedCurrent thresholdAt(PhaseDuration phaseDuration) const;
    /// Charge of one rectangular phase at that threshold.
    ChargePerPhase chargeAt(PhaseDuration phaseDuration) const;
};

/// Unweighted least squares; a duration that was measured several times counts as often. Sources of
/// the laws: Weiss, Arch Ital Biol 1901;35:413, and Lapicque, J Physiol Pathol Gen 1907;9:620 (both
/// from memory, not seen); Weiss' law also in Geddes, IEEE Trans Biomed Eng 2004.
/// Errors: `outOfRange` (a duration or threshold not above 0; figures: value, least),
/// `tooFewDurations` (figures: different durations there are, needed), `noFit` (rheobase or
/// chronaxie would not be above 0: figures as they came out, or none where the squares only fall
/// on and on).
Result<StrengthDurationFit> fitStrengthDuration(std::span<const ThresholdPoint> points,
                                                StrengthDurationLaw law);

namespace limits
{

/// r.m.s. error in percent of the mean threshold, above which the law does not describe the points.
inline constexpr double mostFitErrorPercent = 10.0;
inline constexpr Source mostFitErrorSource = commonPractice;

/// Chronaxie above which an innervated muscle is unlikely, seen from pads on the skin; usual are
/// 50 to 700 µs.
inline constexpr FittedDuration mostChronaxie{1000.0};
inline constexpr Source mostChronaxieSource{"chronaxies of innervated muscle, surface pads", true};

} // namespace limits

/// Remarks on a fit of these points: a poor fit, a long chronaxie, and two durations only, through
/// which the law runs whether it holds or not.
std::vector<Finding> fitFindings(const StrengthDurationFit& fit,
                                 std::span<const ThresholdPoint> points);

/// The phase duration that reaches the threshold with the least charge.
struct LeastCharge {
    PhaseDuration phaseDuration;
    FittedCurrent threshold; ///< by the law
    ChargePerPhase charge;
};

/// By both laws the charge at threshold grows with the phase duration, from Irh tch (Weiss) or
/// Irh tau (Lapicque) at the shortest upwards: the least charge is always at the shortest phase
/// offered. `offered` in µs, its least above 0. Outside the measured durations this is no more than
/// the law's word.
LeastCharge leastCharge(const StrengthDurationFit& fit, const CountRange& offered);

} // namespace quadrille
